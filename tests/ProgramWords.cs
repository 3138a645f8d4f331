using System.Runtime.CompilerServices;
using Lanewright.Files;

namespace Lanewright.Tests;

/// <summary>The program brings the words of papers, logs and records; a test that speaks with these alone wants them too.</summary>
internal static class ProgramWords
{
    [ModuleInitializer]
    internal static void Bring() => RuntimeHelpers.RunModuleConstructor(typeof(SheetFile).Module.ModuleHandle);
}
