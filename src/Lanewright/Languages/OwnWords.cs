using System.Diagnostics.CodeAnalysis;
using System.Reflection;
using System.Runtime.CompilerServices;
using Lanewright.Core.Text;
using Lanewright.Documents;
using Lanewright.Logs.Profiles;
using Lanewright.Storage.Database;

namespace Lanewright.Languages;

/// <summary>Brings what the program says in other languages, and what it says with the words of papers, of logs and of records: these assemblies may
/// not be loaded yet when it does, and are looked into only when another language than English is spoken.</summary>
internal static class OwnWords
{
    [ModuleInitializer]
    [SuppressMessage("Usage", "CA2255:The 'ModuleInitializer' attribute should not be used in libraries", Justification = "The words must be there whichever of its classes speaks first.")]
    internal static void Add()
    {
        Language.AddTables(code => Open(typeof(OwnWords).Assembly, code));
        Language.AddTables(code => Open(typeof(Certificate).Assembly, code));
        Language.AddTables(code => Open(typeof(LogProfile).Assembly, code));
        Language.AddTables(code => Open(typeof(RecordsPlace).Assembly, code));
    }

    private static Stream? Open(Assembly assembly, string code) => assembly.GetManifestResourceStream(code + ".json");
}
