using System.Numerics;
using System.Runtime.CompilerServices;

namespace Lanewright.Core.Statistics;

/// <summary>
/// Random numbers that are the same on every machine for the same seed and stream: xoshiro256++ (D. Blackman and
/// S. Vigna, "Scrambled linear pseudorandom number generators", ACM Transactions on Mathematical Software 47 (2021)),
/// seeded through splitmix64. Period 2^256 - 1. Not for secrets. One instance belongs to one thread.
/// </summary>
public sealed partial class RandomSource
{
    private ulong s0;
    private ulong s1;
    private ulong s2;
    private ulong s3;

    /// <summary>Starts the generator.</summary>
    /// <param name="seed">Any number; equal seeds give equal sequences.</param>
    /// <param name="stream">Sequences of one seed with different stream numbers are unrelated, e.g. one per task.
    /// Stream 0 is the plain published seeding.</param>
    public RandomSource(ulong seed, ulong stream = 0)
    {
        var state = stream == 0 ? seed : Mix(Mix(seed) + (stream * SplitMixStep));
        s0 = SplitMix(ref state);
        s1 = SplitMix(ref state);
        s2 = SplitMix(ref state);
        s3 = SplitMix(ref state);
    }

    private const ulong SplitMixStep = 0x9E3779B97F4A7C15;

    private static ulong SplitMix(ref ulong state) => Mix(state += SplitMixStep);

    private static ulong Mix(ulong z)
    {
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
        return z ^ (z >> 31);
    }

    /// <summary>64 random bits.</summary>
    public ulong NextUInt64() => Step(ref s0, ref s1, ref s2, ref s3);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static ulong Step(ref ulong s0, ref ulong s1, ref ulong s2, ref ulong s3)
    {
        ulong a = s0, b = s1, c = s2, d = s3;
        var result = BitOperations.RotateLeft(a + d, 23) + a;
        var shifted = b << 17;
        c ^= a;
        d ^= b;
        s1 = b ^ c;
        s0 = a ^ d;
        s2 = c ^ shifted;
        s3 = BitOperations.RotateLeft(d, 45);
        return result;
    }

    /// <summary>Uniform from 0 (included) to 1 (not included), a multiple of 2^-53.</summary>
    public double NextDouble() => UnitFrom(NextUInt64());

    private static double UnitFrom(ulong bits) => (bits >> 11) * (1 / 9007199254740992.0);

    /// <summary>Uniform above 0 and up to 1, fit for a logarithm.</summary>
    private double NextAboveZero() => ((NextUInt64() >> 11) + 1) * (1 / 9007199254740992.0);

    /// <summary>A whole number from 0 to <paramref name="below"/> - 1, each equally likely.</summary>
    /// <remarks>D. Lemire, ACM Transactions on Modeling and Computer Simulation 29 (2019).</remarks>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="below"/> is not above 0.</exception>
    public int NextInt(int below)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(below);
        var bound = (ulong)below;
        var product = (NextUInt64() >> 32) * bound;
        if ((uint)product < bound)
        {
            // Some results have one more way to arise than others: the surplus ways are refused.
            var refused = ((1UL << 32) - bound) % bound;
            while ((uint)product < refused)
                product = (NextUInt64() >> 32) * bound;
        }

        return (int)(product >> 32);
    }

    /// <summary>Puts the items in random order, each order equally likely (as far as the period allows).</summary>
    public void Shuffle<T>(Span<T> items)
    {
        for (var i = items.Length - 1; i > 0; i--)
        {
            var j = NextInt(i + 1);
            (items[i], items[j]) = (items[j], items[i]);
        }
    }
}
