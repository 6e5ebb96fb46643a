using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Security.Cryptography;
using Xunit;

namespace LoggerBox.Protocol.Tests.Vectors;

/// <summary>
/// Version 1 is out: archives and cards are full of it, and other programs were written against it. A line is added for a vector that is new;
/// none is ever changed or taken out. Who must change bytes makes version 2, and a folder of its own.
/// </summary>
public sealed class FrozenVectorTests
{
    private static readonly string Folder = Path.Combine(Repository.Root, "tests", "vectors", "v1");

    /// <summary>SHA-256 of the bytes that a vector stands for.</summary>
    private static readonly Dictionary<string, string> Digests = new()
    {
        ["DropoutRecord"] = "0cfac9ad08bf9a20eefce2d29dad5036741afb3b858eb931b808a08a3b89333b",
        ["EngagementRecord"] = "525ef9c648109192cb07b6230286880cc3e3e5b023c7f3a873baad232a418a73",
        ["EventRecord"] = "e10b09db24b75017d3fa245dcdcd5e1f0c301a030b5026e9f521e88c5c8f11be",
        ["HoldRecord-drifting"] = "1b82b1245392ea6f586f6ddb1222ea178f80b3f14ae188eeedc7911025286de5",
        ["HoldRecord"] = "d9edcab357f34824103a2d988cd9cf47aa10f375dc58782aeaee918cc778f264",
        ["PlanRecord"] = "1a7b9fd2e1dc8f595d4157a115ebfcba8278fa00c89042b232bc2a91acce08c4",
        ["RunUpRecord"] = "f4a989b93659e961cd24a4bff8755b9f8cd8f983463b98120fceac30e7e22956",
        ["SampleBlock-plain"] = "3de9f39dd4f01004f9626ba458372471e6d09def86713421084ff833a3bd41c4",
        ["SampleBlock-uneven"] = "2fffd3a9652e842e2df998d601452deeec79802575e2043fc2ccf77a91bb505f",
        ["SampleBlock"] = "b9b8e51bf84e601da6c23da0a3dfe540c3bfc38bc4b21a0550a465b890ef8457",
        ["SessionConfirmation"] = "7923a57b9af803970a970766fec9e2ece5c0fd7f94132b92d9dfe2d438c36006",
        ["SessionEnd"] = "1de3ab06dbc8f74b6f5cd1f5e5a9c2a680794ae86ccd143550d946c497addf20",
        ["SessionHeader"] = "9c2db4a7c3ca35eaabd481c266c59bcf682b73d4c9b18d44d1bbaefc11dced2e",
        ["frame-CalibrationAnswer"] = "7b93f98529021f9c0ecf90afadc2c8cd6a07167820d8fb48274a01b222fc4c78",
        ["frame-ClockAnswer"] = "368704c3e5259908cfd5b7eb3b9511e4c25b762a226dd94f77bf758d86f49110",
        ["frame-Confirm"] = "7e9c1cbcefdd90b0923d6083206e3edd67ca5c51e5d2c23f29fd04e04a4fe3c0",
        ["frame-Confirmed"] = "7988ac82e544001ca8c8add55cbb9661ed93299e1848ef10713efe447b0cb164",
        ["frame-Data"] = "0a50c5145f0f5896d83f7d8d668747108ffe0127021dae920542f590a5b25122",
        ["frame-Fetch"] = "450c5521069bfaa937adbcfaae4b83c9767bb6bbc740c2791c18ba6f3bd0a2d1",
        ["frame-FetchEnd"] = "59f59eadb2ad5ba571c73e60a6ffdb082b2da3cb1d7d3a26a3086c71da325c3e",
        ["frame-GetCalibration"] = "4965b6cd0e69e14fa3a9bd05f6d2750bdbca6ab91b15025559119c22cb1522b1",
        ["frame-Hello"] = "fdb8b0a59443a684940c2f7d1deea208b1970e9f6e26bf8c5dae28005130e36b",
        ["frame-HelloAnswer"] = "6ff4a5030bf84ac6064b231d2caf1890b2a944d8ad21b0229f0392722d205316",
        ["frame-List"] = "3db43b03fa7dc71f20390d39862a64371c49a0ec64fb2af01f2ec60fd83f1a32",
        ["frame-LiveReadings"] = "b0cbf8e9858655cb9c995bf8f4e1edcd36c4401c980f7d0cf8461680203f5467",
        ["frame-PlanAnswer"] = "a8f3c8d9b14aade335d999c72a6bfb16e8af5729006de44d8f21ed21206c020f",
        ["frame-Refusal"] = "43b2e51adb25874d88b1f24b720e61a0c4cfdbb38084e40238ad95a9422ae4bd",
        ["frame-SendCalibration"] = "fd50af79f24b5a452def08f4512de9edf0aa1bce71e8aa9ebffee9fabe3da508",
        ["frame-SendPlan"] = "2e08194cc8408ae1655f876c040c4c9010ae914fdf174ac80373a4834afc687b",
        ["frame-SessionList"] = "24805befa7c201352ceabb373efa4b1502691c0e655da7a74074f3513df46ba9",
        ["frame-SetClock"] = "b820fe856babbd8d2a7ac761c930f42833c898625f5e842ca6f58b2bd531144b",
        ["frame-Watch"] = "62147798948ec0df2b7ba6660674922e394047ddbe3f8c9714526c9f3f563ec2",
    };

    [Fact]
    public void The_bytes_of_every_vector_are_those_that_were_frozen()
    {
        Dictionary<string, string> found = Directory.GetFiles(Folder, "*.hex").ToDictionary(
            file => Path.GetFileNameWithoutExtension(file),
            file => Convert.ToHexStringLower(SHA256.HashData(Convert.FromHexString(File.ReadAllText(file).ReplaceLineEndings("")))));
        Assert.Equal(Digests.OrderBy(vector => vector.Key, StringComparer.Ordinal), found.OrderBy(vector => vector.Key, StringComparer.Ordinal));
    }
}
