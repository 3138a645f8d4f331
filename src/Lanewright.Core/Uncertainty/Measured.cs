namespace Lanewright.Core.Uncertainty;

/// <summary>
/// A value in SI together with what each independent error source does to it (first-order, GUM 5.1.2 and 5.2.2 with the
/// correlations carried by shared sources). So <c>x - x</c> is 0 with no uncertainty, and a scale used twice cancels
/// what it should and keeps what it should. There is no equality and no order: ask a named test instead.
/// </summary>
#pragma warning disable CA1815 // Override equals on value types: uncertain values have no equality on purpose.
public readonly partial struct Measured
#pragma warning restore CA1815
{
    private readonly Contribution[]? contributions;

    private Measured(double value, Contribution[]? sorted)
    {
        if (!double.IsFinite(value))
            throw new ArgumentOutOfRangeException(nameof(value), value, "A measured value must be finite.");
        Value = value;
        contributions = sorted;
    }

    /// <summary>The best estimate, SI.</summary>
    public double Value { get; }

    /// <summary>What moves it, in the order of the sources' identities; no source twice and none of amount 0.</summary>
    public ReadOnlySpan<Contribution> Contributions => contributions;

    /// <summary>The variance: the sum of the squared contributions.</summary>
    public double Variance
    {
        get
        {
            var sum = 0.0;
            foreach (var c in Contributions)
                sum += c.Amount * c.Amount;
            return sum;
        }
    }

    /// <summary>The combined standard uncertainty u, SI.</summary>
    public double StandardUncertainty => Math.Sqrt(Variance);

    /// <summary>u divided by the size of the value; infinite for a value of 0 with uncertainty.</summary>
    public double RelativeUncertainty => Variance == 0 ? 0 : StandardUncertainty / Math.Abs(Value);

    /// <summary>A value without error.</summary>
    public static Measured Exact(double value) => new(value, null);

    /// <summary>A value with one error source of standard uncertainty <paramref name="standardUncertainty"/>.</summary>
    public static Measured Of(double value, double standardUncertainty, ErrorSource source)
    {
        ArgumentNullException.ThrowIfNull(source);
        if (!(standardUncertainty >= 0) || double.IsInfinity(standardUncertainty))
            throw new ArgumentOutOfRangeException(nameof(standardUncertainty), standardUncertainty, "Must be 0 or more.");
        return new(value, standardUncertainty == 0 ? null : [new(source, standardUncertainty)]);
    }

    /// <summary>A value with given contributions in any order; those of one source are added.</summary>
    public static Measured Of(double value, ReadOnlySpan<Contribution> contributions) =>
        Gather(value, contributions.ToArray());

    /// <summary>
    /// The sum of <c>coefficients[i] * values[i]</c>. For one nonlinear step pass the partial derivatives as
    /// coefficients and the function's value as <paramref name="value"/>.
    /// </summary>
    /// <exception cref="ArgumentException">The spans differ in length.</exception>
    public static Measured Linear(
        ReadOnlySpan<Measured> values, ReadOnlySpan<double> coefficients, double? value = null)
    {
        if (values.Length != coefficients.Length)
            throw new ArgumentException("One coefficient for each value.", nameof(coefficients));
        var length = 0;
        foreach (var v in values)
            length += v.Contributions.Length;
        var sum = 0.0;
        var all = new Contribution[length];
        var n = 0;
        for (var i = 0; i < values.Length; i++)
        {
            sum += coefficients[i] * values[i].Value;
            foreach (var c in values[i].Contributions)
                all[n++] = c with { Amount = c.Amount * coefficients[i] };
        }

        return Gather(value ?? sum, all);
    }

    /// <summary>The sum of all values.</summary>
    public static Measured Sum(ReadOnlySpan<Measured> values)
    {
        var ones = new double[values.Length];
        Array.Fill(ones, 1);
        return Linear(values, ones);
    }

    /// <summary>Covariance through the sources both share.</summary>
    public static double Covariance(Measured a, Measured b)
    {
        ReadOnlySpan<Contribution> x = a.Contributions, y = b.Contributions;
        var sum = 0.0;
        for (int i = 0, j = 0; i < x.Length && j < y.Length;)
        {
            var order = x[i].Source.CompareTo(y[j].Source);
            if (order == 0) sum += x[i++].Amount * y[j++].Amount;
            else if (order < 0) i++;
            else j++;
        }

        return sum;
    }

    /// <summary>Correlation in -1..1; 0 when one of the two has no uncertainty.</summary>
    public static double Correlation(Measured a, Measured b)
    {
        var scale = Math.Sqrt(a.Variance) * Math.Sqrt(b.Variance);
        return scale == 0 ? 0 : Math.Clamp(Covariance(a, b) / scale, -1, 1);
    }

    /// <summary>The same value moved by one more source.</summary>
    public Measured With(ErrorSource source, double standardUncertainty) =>
        this + Of(0, standardUncertainty, source);

    /// <summary>A function of this value, given what it yields and its derivative here.</summary>
    public Measured Map(double value, double derivative) => Linear([this], [derivative], value);

    /// <summary>Square root of a value above 0, or of an exact 0.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative, or 0 with uncertainty, where the first-order
    /// uncertainty would be infinite.</exception>
    public static Measured Sqrt(Measured x)
    {
        if (x.Value < 0 || (x.Value == 0 && x.Variance > 0))
            throw new ArgumentOutOfRangeException(nameof(x), x.Value, "Must be above 0.");
        if (x.Value == 0) return x;
        var root = Math.Sqrt(x.Value);
        return x.Map(root, 0.5 / root);
    }

    /// <summary>Sum.</summary>
    public static Measured operator +(Measured a, Measured b) => Join(a, 1, b, 1, a.Value + b.Value);

    /// <summary>Difference; what both share cancels.</summary>
    public static Measured operator -(Measured a, Measured b) => Join(a, 1, b, -1, a.Value - b.Value);

    /// <summary>Product.</summary>
    public static Measured operator *(Measured a, Measured b) => Join(a, b.Value, b, a.Value, a.Value * b.Value);

    /// <summary>Quotient.</summary>
    /// <exception cref="DivideByZeroException"><paramref name="b"/> is 0.</exception>
    public static Measured operator /(Measured a, Measured b)
    {
        if (b.Value == 0) throw new DivideByZeroException("A measured value was divided by one of value 0.");
        var q = a.Value / b.Value;
        return Join(a, 1 / b.Value, b, -q / b.Value, q);
    }

    /// <summary>Negative.</summary>
    public static Measured operator -(Measured a) => a.Map(-a.Value, -1);

    /// <summary>An exact number as a measured value.</summary>
    public static implicit operator Measured(double value) => Exact(value);

    /// <inheritdoc/>
    public override string ToString() =>
        string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{Value:R} (u {StandardUncertainty:G3})");

    private static Measured Join(Measured a, double ca, Measured b, double cb, double value)
    {
        ReadOnlySpan<Contribution> x = a.Contributions, y = b.Contributions;
        if (x.Length + y.Length == 0) return new(value, null);
        var merged = new Contribution[x.Length + y.Length];
        int i = 0, j = 0, n = 0;
        while (i < x.Length || j < y.Length)
        {
            var order = i == x.Length ? 1 : j == y.Length ? -1 : x[i].Source.CompareTo(y[j].Source);
            var source = order <= 0 ? x[i].Source : y[j].Source;
            var amount = 0.0;
            if (order <= 0) amount += ca * x[i++].Amount;
            if (order >= 0) amount += cb * y[j++].Amount;
            if (amount != 0) merged[n++] = new(source, amount);
        }

        return new(value, n == merged.Length ? merged : merged[..n]);
    }

    // Orders the contributions, which it may keep, and adds up those of one source.
    private static Measured Gather(double value, Contribution[] all)
    {
        Array.Sort(all, static (a, b) => a.Source.CompareTo(b.Source));
        var n = 0;
        for (var i = 0; i < all.Length;)
        {
            var source = all[i].Source;
            var amount = 0.0;
            for (; i < all.Length && all[i].Source.Equals(source); i++)
                amount += all[i].Amount;
            if (amount != 0) all[n++] = new(source, amount);
        }

        return new(value, n == all.Length ? all : all[..n]);
    }
}
