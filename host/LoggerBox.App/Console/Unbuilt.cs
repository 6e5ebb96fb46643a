using LoggerBox.Host;

namespace LoggerBox.App.Console;

/// <summary>A verb whose parts are not joined in this build says so and fails.</summary>
internal static class Unbuilt
{
    public static int Run(string verb) => throw new UserErrorException(Messages.NotBuilt(verb));
}
