namespace LoggerBox.Host.Units;

/// <summary>The units that data sheets, trace files and reports write pressures in.</summary>
public enum PressureUnit
{
    Psi,
    Kilopascal,
    Bar,
    KilogramForcePerSquareCentimetre,
}
