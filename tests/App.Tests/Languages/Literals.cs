using System.Globalization;
using System.Text;
using Lanewright.Core.Text;
using Mono.Cecil;
using Mono.Cecil.Cil;

namespace Lanewright.App.Tests.Languages;

/// <summary>
/// Reads every text out of compiled code, pages included, and what becomes of it. The compiler has already joined
/// texts that are written on several lines, so what is found is what people would see.
/// </summary>
internal static class Literals
{
    // An exception is made at most so many instructions after its message.
    private const int Near = 14;

    private static readonly string[] Shown = ["aria-label", "placeholder", "title", "alt", "Title", "OnlyLabel"];

    public static IReadOnlyList<Literal> Of(string assembly)
    {
        using var module = ModuleDefinition.ReadModule(assembly);
        var found = new List<Literal>();
        foreach (var type in module.GetTypes())
        {
            var outer = type;
            while (outer.DeclaringType is not null) outer = outer.DeclaringType;
            foreach (var method in type.Methods.Where(m => m.HasBody && m.Name is not "PrintMembers")) Read(outer.FullName, method.Body, found);
        }

        return found;
    }

    private static void Read(string type, MethodBody body, List<Literal> found)
    {
        var open = new Stack<Building>();
        foreach (var instruction in body.Instructions)
        {
            if (instruction.OpCode == OpCodes.Newobj && Called(instruction) is { DeclaringType.FullName: var made, Parameters.Count: 2 } && made == typeof(Phrase).FullName)
            {
                open.Push(new(Number(instruction.Previous.Previous), Number(instruction.Previous)));
            }
            else if (Called(instruction) is { Name: "AppendLiteral" or "AppendFormatted" } call && call.DeclaringType.FullName == typeof(Phrase).FullName)
            {
                var building = open.Peek();
                if (call.Name == "AppendLiteral") building.Add((string)instruction.Previous.Operand);
                else building.Value();
                if (building.IsDone) found.Add(new(type, open.Pop().Key, Use.Phrase));
            }
            else if (instruction.OpCode == OpCodes.Ldstr)
            {
                var use = UseOf(instruction);
                if (use is { } known) found.Add(new(type, (string)instruction.Operand, known));
            }
        }

        if (open.Count > 0) throw new InvalidOperationException($"{type}: a phrase was not understood.");
    }

    // Null for a piece of a phrase, which is found whole.
    private static Use? UseOf(Instruction text)
    {
        var next = Next(text);
        switch (next is null ? null : Called(next))
        {
            case { Name: "op_Implicit" or "FromString", DeclaringType.Name: nameof(Phrase) }: return Use.Phrase;
            case { Name: "AppendLiteral", DeclaringType.Name: nameof(Phrase) }: return null;
            case { Name: "AppendLiteral" }: return Use.Piece;
            case { Name: "AddMarkupContent" or "AddContent" }: return Use.Markup;
            // What an attribute or a parameter of a page shows.
            case { Name: "AddAttribute" or "AddComponentParameter" or "TypeCheck" }
                when text.Previous is { OpCode.Code: Code.Ldstr, Operand: string name } && Shown.Contains(name): return Use.Markup;
        }

        var at = text;
        for (var i = 0; i < Near && at is not null; i++, at = at.Next)
        {
            if (at.OpCode == OpCodes.Newobj && Called(at)!.DeclaringType.Name.EndsWith("Exception", StringComparison.Ordinal)) return Use.Exception;
            if (at.OpCode.FlowControl is FlowControl.Return) break;
        }

        return Use.Other;
    }

    // Where a choice between texts comes together again.
    private static Instruction? Next(Instruction text)
    {
        var next = text.Next;
        while (next is not null && (next.OpCode == OpCodes.Nop || next.OpCode.FlowControl is FlowControl.Branch))
            next = next.OpCode == OpCodes.Nop ? next.Next : (Instruction)next.Operand;
        return next;
    }

    private static MethodReference? Called(Instruction instruction) => instruction.Operand as MethodReference;

    private static int Number(Instruction load) =>
        load.OpCode.Code is >= Code.Ldc_I4_0 and <= Code.Ldc_I4_8 ? load.OpCode.Code - Code.Ldc_I4_0
        : Convert.ToInt32(load.Operand, CultureInfo.InvariantCulture);

    // As Phrase itself puts the key together.
    private sealed class Building(int letters, int values)
    {
        private readonly StringBuilder key = new();
        private int lettersSeen;
        private int valuesSeen;
        private int next;

        public bool IsDone => lettersSeen == letters && valuesSeen == values;

        public string Key => key.ToString();

        public void Add(string text)
        {
            lettersSeen += text.Length;
            if (text.Contains('|', StringComparison.Ordinal)) next = 0;
            key.Append(text.Replace("{", "{{", StringComparison.Ordinal).Replace("}", "}}", StringComparison.Ordinal));
        }

        public void Value()
        {
            valuesSeen++;
            key.Append('{').Append(next++).Append('}');
        }
    }
}
