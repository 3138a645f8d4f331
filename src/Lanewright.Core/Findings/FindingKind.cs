namespace Lanewright.Core.Findings;

/// <summary>One entry of the catalogue of findings: a stable code and what is said and advised, in English.</summary>
/// <param name="Code">Stable code: area, dot, words joined by hyphens. Never reused for something else.</param>
/// <param name="Severity">How much it matters unless the case says otherwise.</param>
/// <param name="Message">What was found; <c>{name}</c> stands for a value of the finding.</param>
/// <param name="Action">What to do about it; same placeholders.</param>
public sealed record FindingKind(string Code, Severity Severity, string Message, string Action)
{
    /// <summary>A finding of this kind about one field.</summary>
    public Finding At(string field, params FindingValue[] values) => new(this, Severity, field, values);

    /// <summary>A finding of this kind with a severity of its own.</summary>
    public Finding At(Severity severity, string field, params FindingValue[] values) => new(this, severity, field, values);
}
