using System;

namespace LoggerBox.TruckSimulator.Truck;

/// <summary>A table read with straight lines between its points and held level beyond its ends.</summary>
public sealed class Curve
{
    private readonly double[] _x;
    private readonly double[] _y;

    /// <param name="points">x, y, x, y, ... with x increasing.</param>
    public Curve(params double[] points)
    {
        ArgumentNullException.ThrowIfNull(points);
        _x = new double[points.Length / 2];
        _y = new double[_x.Length];
        for (int i = 0; i < _x.Length; i++)
        {
            _x[i] = points[2 * i];
            _y[i] = points[2 * i + 1];
        }
    }

    private Curve(double[] x, double[] y)
    {
        _x = x;
        _y = y;
    }

    public double At(double x)
    {
        int last = _x.Length - 1;
        if (x <= _x[0])
        {
            return _y[0];
        }

        if (x >= _x[last])
        {
            return _y[last];
        }

        int right = 1;
        while (_x[right] < x)
        {
            right++;
        }

        double share = (x - _x[right - 1]) / (_x[right] - _x[right - 1]);
        return _y[right - 1] + share * (_y[right] - _y[right - 1]);
    }

    /// <summary>The same x with other y.</summary>
    public Curve Reshape(Func<double, double, double> newY)
    {
        ArgumentNullException.ThrowIfNull(newY);
        var y = new double[_y.Length];
        for (int i = 0; i < y.Length; i++)
        {
            y[i] = newY(_x[i], _y[i]);
        }

        return new Curve(_x, y);
    }
}
