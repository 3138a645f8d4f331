using System.Diagnostics.CodeAnalysis;
using System.Runtime.CompilerServices;
using Lanewright.Core.Text;

namespace Lanewright.Storage.Languages;

/// <summary>Brings what only this assembly says in other languages.</summary>
internal static class OwnWords
{
    [ModuleInitializer]
    [SuppressMessage("Usage", "CA2255:The 'ModuleInitializer' attribute should not be used in libraries", Justification = "The words must be there whichever of its classes speaks first.")]
    internal static void Add() => Language.AddTables(code => typeof(OwnWords).Assembly.GetManifestResourceStream(code + ".json"));
}
