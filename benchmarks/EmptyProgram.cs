using System.Diagnostics;

namespace Lanewright.Benchmarks;

/// <summary>A console program that does nothing, published with the settings of the real one.</summary>
internal static class EmptyProgram
{
    private const string Project =
        """
        <Project Sdk="Microsoft.NET.Sdk">
          <PropertyGroup>
            <OutputType>Exe</OutputType>
            <TargetFramework>net10.0</TargetFramework>
            <InvariantGlobalization>true</InvariantGlobalization>
            <TieredPGO>false</TieredPGO>
            <RuntimeIdentifier>$(NETCoreSdkRuntimeIdentifier)</RuntimeIdentifier>
            <SelfContained>false</SelfContained>
            <PublishReadyToRun>true</PublishReadyToRun>
          </PropertyGroup>
        </Project>
        """;

    /// <summary>Builds it under the output folder and gives the path of its executable.</summary>
    internal static string Build(string root)
    {
        var folder = Path.Combine(root, "out", "empty");
        Directory.CreateDirectory(folder);
        File.WriteAllText(Path.Combine(folder, "empty.csproj"), Project);
        File.WriteAllText(Path.Combine(folder, "Program.cs"), "return 0;\n");
        // Empty files keep the repository's own build settings out.
        foreach (var name in new[] { "Directory.Build.props", "Directory.Packages.props" })
            File.WriteAllText(Path.Combine(folder, name), "<Project />\n");
        var bin = Path.Combine(folder, "published");
        using var process = Process.Start(
            "dotnet", ["publish", folder, "-c", "Release", "-o", bin, "-v", "quiet", "--nologo"]);
        process.WaitForExit();
        return process.ExitCode == 0
            ? Path.Combine(bin, "empty")
            : throw new InvalidOperationException("The empty program could not be built.");
    }
}
