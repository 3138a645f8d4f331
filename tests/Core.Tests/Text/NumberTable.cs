namespace Lanewright.Core.Tests.Text;

/// <summary>
/// Numbers as people type them and what they mean. One column after the text: the same everywhere. Three: in en-US and
/// en-GB; where the decimal mark is a comma; in files. "or" parts the meanings of a question; a word is a problem.
/// <c>_</c> stands for a no-break space, <c>~</c> for a narrow no-break space.
/// </summary>
internal static class NumberTable
{
    internal const string Rows =
        """
        0 | 0
        00 | 0
        -0 | 0
        7 | 7
        007 | 7
        42 | 42
        1250 | 1250
        1234567 | 1234567
        +5 | 5
        -5 | -5
        −5 | -5
        –5 | -5
        - 5 | -5
        +−5 | NotANumber
        --5 | NotANumber
        5- | NotANumber
        (5) | NotANumber
        12.5 | 12.5
        12,5 | 12.5
        12.50 | 12.5
        12,50 | 12.5
        0.5 | 0.5
        0,5 | 0.5
        .5 | 0.5
        ,5 | 0.5
        -.5 | -0.5
        5. | 5
        5, | 5
        5.. | NotANumber
        . | NotANumber
        , | NotANumber
        - | NotANumber
        + | NotANumber
        1,250 | 1250 | 1.25 | 1.25 or 1250
        1.250 | 1.25 | 1.25 or 1250 | 1.25
        -1,250 | -1250 | -1.25 | -1.25 or -1250
        -1.250 | -1.25 | -1.25 or -1250 | -1.25
        12,500 | 12500 | 12.5 | 12.5 or 12500
        12.500 | 12.5 | 12.5 or 12500 | 12.5
        125,000 | 125000 | 125 | 125 or 125000
        125.000 | 125 | 125 or 125000 | 125
        1,234 | 1234 | 1.234 | 1.234 or 1234
        1.234 | 1.234 | 1.234 or 1234 | 1.234
        0,250 | 0.25
        0.250 | 0.25
        00,250 | 0.25
        ,250 | 0.25
        .250 | 0.25
        1234,567 | 1234.567
        1234.567 | 1234.567
        1,25 | 1.25
        1.25 | 1.25
        1,2500 | 1.25
        1.2500 | 1.25
        1,250.5 | 1250.5
        1.250,5 | 1250.5
        1,250.500 | 1250.5
        1.250,500 | 1250.5
        12,345.678 | 12345.678
        12.345,678 | 12345.678
        1,250,000 | 1250000
        1.250.000 | 1250000
        1,250,000.25 | 1250000.25
        1.250.000,25 | 1250000.25
        1 250 | 1250
        1_250 | 1250
        1~250 | 1250
        1 250 000 | 1250000
        1~250~000 | 1250000
        1 250,5 | 1250.5
        1 250.5 | 1250.5
        1~250,500 | 1250.5
        1'250 | 1250
        1’250 | 1250
        1'250'000 | 1250000
        1'250.5 | 1250.5
        1'250,5 | 1250.5
        1234 567 | NotANumber
        0 250 | NotANumber
        1 25 | NotANumber
        1 2500 | NotANumber
        1,250 500 | NotANumber
        1.5 250 | NotANumber
        1,25,000 | NotANumber
        12,34,567 | NotANumber
        1,2500,000 | NotANumber
        1,250,00 | NotANumber
        0,250,000 | NotANumber
        1..2 | NotANumber
        1,,2 | NotANumber
        1.,2 | NotANumber
        1.2.3 | NotANumber
        1,2,3 | NotANumber
        1.250.5 | NotANumber
        1,250,5 | NotANumber
        1.250,5.5 | NotANumber
        1,250.5,5 | NotANumber
        192.168.0.1 | NotANumber
        3e3 | 3000
        3E3 | 3000
        3e+3 | 3000
        3e-3 | 0.003
        3e−3 | 0.003
        1.5e3 | 1500
        1,5e3 | 1500
        .5e1 | 5
        1e0 | 1
        3e | UnknownUnit
        3e+ | UnknownUnit
        3e3.5 | NotANumber
        e3 | NotANumber
        1e400 | OutOfRange
        -1e400 | OutOfRange
        1e-400 | OutOfRange
        1e99999999999999999999 | OutOfRange
        0e400 | 0
        1/2 | 0.5
        -1/2 | -0.5
        3/4 | 0.75
        5/4 | 1.25
        1 1/2 | 1.5
        1_1/2 | 1.5
        -1 1/2 | -1.5
        1-1/2 | 1.5
        10 3/8 | 10.375
        1 5/4 | NotANumber
        1/0 | UnknownUnit
        1/2/3 | UnknownUnit
        1/2.5 | NotANumber
        1.5/2 | UnknownUnit
        1,250 1/2 | NotANumber
        1 250 1/2 | 1250.5
        ½ | 0.5
        ¼ | 0.25
        1½ | 1.5
        1 ½ | 1.5
        -1½ | -1.5
        2⅝ | 2.625
        1⁄2 | 0.5
        ½½ | NotANumber
        1.5½ | NotANumber
        NaN | NotANumber
        nan | NotANumber
        Infinity | NotANumber
        -Infinity | NotANumber
        ∞ | NotANumber
        null | NotANumber
        twelve | NotANumber
        0x10 | UnknownUnit
        ５ | NotANumber
        ٣ | NotANumber
        १२ | NotANumber
        五 | NotANumber
        🚚 | NotANumber
        5🚚 | NotANumber
        10-12 | NotANumber
        10..12 | NotANumber
        10~12 | NotANumber
        ~5 | 5
        =5 | NotANumber
        $5 | NotANumber
        2024-01-05 | NotANumber
        12:30 | NotANumber
        5 kg | WrongDimension
        5% | WrongDimension
        5 blobs | UnknownUnit
        """;
}
