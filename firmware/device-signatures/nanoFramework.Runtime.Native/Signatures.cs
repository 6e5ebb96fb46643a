// Signatures of nanoFramework.Runtime.Native 1.7.11, compared with github.com/nanoframework/nanoFramework.Runtime.Native at a7c24bd.
// Only what the firmware uses; every body throws.
[assembly: System.Reflection.AssemblyVersion("1.7.11.0")]

namespace nanoFramework.Runtime.Native
{
    using global::System;

    public static class GC
    {
        public static uint Run(bool compactHeap) => throw new NotImplementedException();
    }

    public class Power
    {
        public static void RebootDevice(int exeConstraintTimeout, RebootOption rebootOption = RebootOption.NormalReboot) => throw new NotImplementedException();
    }

    public enum RebootOption
    {
        NormalReboot = 0,
        EnterNanoBooter = 1,
        ClrOnly = 2,
        EnterProprietaryBooter = 8,
    }

    public static class SystemInfo
    {
        public static Version Version => throw new NotImplementedException();

        public static string TargetName => throw new NotImplementedException();

        public static string Platform => throw new NotImplementedException();
    }
}
