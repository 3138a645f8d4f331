using System.Reflection.Metadata;
using System.Reflection.PortableExecutable;
using ArchUnitNET.Domain;
using ArchUnitNET.Loader;
using Lanewright.Core.Findings;
using Lanewright.Files;

namespace Lanewright.App.Tests.Architecture;

/// <summary>The arrows between the parts. Every rule must match something, and every permission must be used.</summary>
[Trait("culture", "own")]
public sealed class CoreTests
{
    private const string Root = "Lanewright.Core";

    private static readonly System.Reflection.Assembly CoreAssembly = typeof(Finding).Assembly;

    // What each area of Core may know. A new area is added here, below everything that it does not need.
    private static readonly Dictionary<string, string[]> Allowed = new(StringComparer.Ordinal)
    {
        ["Quantities"] = [],
        ["Statistics"] = [],
        ["Rates"] = [],
        ["Text"] = ["Quantities"],
        ["Findings"] = ["Quantities", "Text"],
        ["Uncertainty"] = ["Statistics"],
        ["Weighing"] = ["Findings", "Quantities", "Uncertainty"],
        ["Spreading"] = ["Findings", "Quantities", "Statistics", "Text", "Uncertainty", "Weighing"],
        ["Charts"] = ["Quantities", "Spreading", "Text", "Uncertainty"],
        ["Exchange"] = ["Charts", "Findings", "Quantities", "Spreading", "Statistics", "Text", "Uncertainty", "Weighing"],
        ["Liquids"] = ["Statistics", "Uncertainty"],
        ["Calibrations"] =
            ["Charts", "Exchange", "Findings", "Liquids", "Quantities", "Rates", "Spreading", "Statistics", "Text", "Uncertainty", "Weighing"],
        ["Catalogue"] = ["Calibrations", "Exchange", "Findings", "Register", "Spreading", "Weighing"],
        ["Register"] = ["Exchange", "Findings", "Quantities", "Spreading", "Weighing"],
        ["Diagnosis"] = ["Charts", "Exchange", "Findings", "Quantities", "Spreading", "Statistics", "Text", "Uncertainty", "Weighing"],
        ["Season"] = ["Liquids", "Statistics", "Uncertainty"],
        ["Season.Roads"] = ["Statistics"],
        ["Practice"] = ["Diagnosis", "Exchange", "Findings", "Quantities", "Spreading", "Statistics", "Text", "Weighing"],
    };

    private static readonly string[] Framework = ["System", "netstandard", "mscorlib"];

    private static readonly string[] ForbiddenTypes =
    [
        "System.IO.File", "System.IO.Directory", "System.IO.Path", "System.IO.FileInfo", "System.IO.DirectoryInfo", "System.IO.FileStream",
        "System.Console", "System.Threading.Thread", "System.Threading.Tasks.Task", "System.Diagnostics.Process",
        "System.Diagnostics.Stopwatch", "System.TimeProvider", "System.TimeZoneInfo", "System.Random", "System.Activator",
    ];

    private static readonly string[] ForbiddenNamespaces = ["System.Net", "System.Reflection", "Microsoft.Win32", "System.Data"];

    [Fact]
    public void Each_area_of_core_knows_only_what_lies_below_it_and_uses_every_permission()
    {
        var used = Used();
        Assert.Equal(Allowed.Keys.Order(StringComparer.Ordinal), used.Keys.Order(StringComparer.Ordinal));
        foreach (var (area, targets) in used)
            Assert.True(targets.SetEquals(Allowed[area]), $"{area} knows {string.Join(", ", targets)}; listed are {string.Join(", ", Allowed[area])}.");
    }

    [Fact]
    public void No_two_areas_know_each_other_even_in_a_circle()
    {
        foreach (var area in Allowed.Keys)
        {
            var reached = new HashSet<string>();
            var open = new Stack<string>(Allowed[area]);
            while (open.TryPop(out var next))
                if (reached.Add(next)) foreach (var further in Allowed[next]) open.Push(further);
            Assert.DoesNotContain(area, reached);
        }
    }

    [Fact]
    public void Core_refers_to_the_framework_only()
    {
        var references = CoreAssembly.GetReferencedAssemblies();
        Assert.NotEmpty(references);
        Assert.All(references, r => Assert.Contains(r.Name!.Split('.')[0], Framework));
    }

    [Fact]
    public void Core_touches_no_file_no_network_no_clock_and_no_thread()
    {
        var types = ReferredTypes(CoreAssembly.Location);
        Assert.Contains("System.Math", types);
        Assert.DoesNotContain(types, ForbiddenTypes.Contains);
        // Attributes that the compiler writes are descriptions, not calls.
        Assert.DoesNotContain(types, type => ForbiddenNamespaces.Any(n => type.StartsWith(n + ".", StringComparison.Ordinal))
            && !type.EndsWith("Attribute", StringComparison.Ordinal) && type != "System.Reflection.Assembly");
        // The languages' tables lie inside Core's own assembly; nothing else is reflected upon.
        Assert.Equal(["GetManifestResourceStream"], MembersOf(CoreAssembly.Location, "System.Reflection", "Assembly"));

        // An iterator that the compiler writes asks for its thread's number; nobody else asks for anything.
        Assert.Equal(["get_CurrentManagedThreadId"], MembersOf(CoreAssembly.Location, "System", "Environment"));

        // The same search finds what the executable, which may, does: so it would find it in Core.
        var executable = ReferredTypes(typeof(SheetFile).Assembly.Location);
        Assert.Contains(executable, ForbiddenTypes.Contains);
    }

    [Fact]
    public void Nothing_refers_to_the_executable()
    {
        Assert.Contains(typeof(SheetFile).Assembly.GetReferencedAssemblies(), r => r.Name == Root);
        Assert.DoesNotContain(CoreAssembly.GetReferencedAssemblies(), r => r.Name == typeof(SheetFile).Assembly.GetName().Name);
        Assert.DoesNotContain(ReferredTypes(CoreAssembly.Location), type => type.StartsWith("Lanewright.Files.", StringComparison.Ordinal));
    }

    // The areas that each area's types depend on: by signature, by inheritance and inside methods.
    private static SortedDictionary<string, SortedSet<string>> Used()
    {
        var architecture = new ArchLoader().LoadAssemblies(CoreAssembly).Build();
        var used = new SortedDictionary<string, SortedSet<string>>(StringComparer.Ordinal);
        foreach (var type in architecture.Types)
        {
            if (AreaOf(type) is not { } area) continue;
            if (!used.TryGetValue(area, out var targets)) used.Add(area, targets = new(StringComparer.Ordinal));
            foreach (var dependency in type.Dependencies)
                if (AreaOf(dependency.Target) is { } target && target != area) targets.Add(target);
        }

        return used;
    }

    private static string? AreaOf(IType type) =>
        type.Namespace?.FullName is { } name && name.StartsWith(Root + ".", StringComparison.Ordinal)
            ? name[(Root.Length + 1)..]
            : null;

    private static List<string> MembersOf(string assembly, string space, string name)
    {
        using var file = new PEReader(File.OpenRead(assembly));
        var metadata = file.GetMetadataReader();
        return [.. metadata.MemberReferences.Select(handle => metadata.GetMemberReference(handle))
            .Where(member => member.Parent.Kind == HandleKind.TypeReference
                && metadata.GetTypeReference((TypeReferenceHandle)member.Parent) is var type
                && metadata.GetString(type.Namespace) == space && metadata.GetString(type.Name) == name)
            .Select(member => metadata.GetString(member.Name))];
    }

    private static HashSet<string> ReferredTypes(string assembly)
    {
        using var file = new PEReader(File.OpenRead(assembly));
        var metadata = file.GetMetadataReader();
        return [.. metadata.TypeReferences.Select(handle => metadata.GetTypeReference(handle))
            .Select(type => $"{metadata.GetString(type.Namespace)}.{metadata.GetString(type.Name)}")];
    }
}
