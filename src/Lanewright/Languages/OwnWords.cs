using System.Diagnostics.CodeAnalysis;
using System.Runtime.CompilerServices;
using Lanewright.Core.Text;
using Lanewright.Documents;
using Lanewright.Logs.Profiles;
using Lanewright.Storage.Database;

namespace Lanewright.Languages;

/// <summary>Brings what the program, its papers, its logs and its records say in other languages.</summary>
internal static class OwnWords
{
    [ModuleInitializer]
    [SuppressMessage("Usage", "CA2255:The 'ModuleInitializer' attribute should not be used in libraries", Justification = "The words must be there whichever class speaks first.")]
    internal static void Add() => Language.AddTables(
        () => typeof(OwnWords).Assembly, () => typeof(Certificate).Assembly, () => typeof(LogProfile).Assembly, () => typeof(RecordsPlace).Assembly);
}
