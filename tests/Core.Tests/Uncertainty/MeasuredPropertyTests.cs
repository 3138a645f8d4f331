using CsCheck;
using Lanewright.Core.Uncertainty;
using static Lanewright.Core.Tests.Uncertainty.MeasuredGen;

namespace Lanewright.Core.Tests.Uncertainty;

public sealed class MeasuredPropertyTests
{
    private const int Iterations = 2000;

    [Fact]
    public void A_value_less_itself_is_exactly_nothing() => Any.Sample(
        x =>
        {
            var none = x - x;
            Assert.Equal(0, none.Value);
            Assert.Equal(0, none.StandardUncertainty);
            Assert.True(none.Contributions.IsEmpty);
            Assert.Equal(0, (x + -x).StandardUncertainty);
        },
        iter: Iterations, threads: 1);

    [Fact]
    public void A_value_by_itself_is_exactly_one() => Positive.Sample(
        x =>
        {
            Assert.Equal(1, (x / x).Value);
            // Both sensitivities are rounded, so only the last bits of u may be left.
            Assert.Equal(0, (x / x).StandardUncertainty, 1e-15 * (1 + x.StandardUncertainty));
        },
        iter: Iterations, threads: 1);

    [Fact]
    public void Multiplying_and_dividing_by_the_same_value_leaves_the_uncertainty() => Gen.Select(Any, Positive).Sample(
        (x, y) => Same(x, x * y / y), iter: Iterations, threads: 1);

    [Fact]
    public void Another_independent_source_never_shrinks_the_uncertainty() =>
        Gen.Select(Any, Gen.Double[0, 5]).Sample(
            (x, u) =>
            {
                var more = x.With(ErrorSource.Normal("another", "another"), u);
                Assert.True(more.Variance >= x.Variance);
                Near(x.Variance + (u * u), more.Variance, more.Variance);
                Assert.Equal(x.Value, more.Value);
            },
            iter: Iterations, threads: 1);

    [Fact]
    public void A_factor_scales_value_and_uncertainty() => Gen.Select(Any, Number(-10, 10)).Sample(
        (x, factor) =>
        {
            var scaled = factor * x;
            Assert.Equal(factor * x.Value, scaled.Value);
            var u = Math.Abs(factor) * x.StandardUncertainty;
            Near(u, scaled.StandardUncertainty, u);
            Near(x.RelativeUncertainty, factor == 0 || x.Value == 0 ? x.RelativeUncertainty : scaled.RelativeUncertainty,
                x.RelativeUncertainty);
        },
        iter: Iterations, threads: 1);

    [Fact]
    public void Operands_can_be_swapped_and_grouped() => Gen.Select(Any, Any, Any).Sample(
        (x, y, z) =>
        {
            Same(x + y, y + x);
            Same(x * y, y * x);
            Same(x + y + z, x + (y + z));
            Same(x * (y + z), (x * y) + (x * z));
            Same(x - y, -(y - x));
            Same(Measured.Sum([x, y, z]), Measured.Sum([z, x, y]));
        },
        iter: Iterations, threads: 1);

    [Fact]
    public void A_linear_step_equals_the_operators_in_a_row() =>
        Gen.Select(Any, Any, Any, Gen.Double[-5, 5].Array[3]).Sample(
            (x, y, z, c) => Same((c[0] * x) + (c[1] * y) + (c[2] * z), Measured.Linear([x, y, z], c)),
            iter: Iterations, threads: 1);

    [Fact]
    public void Covariance_is_symmetric_and_bilinear_and_gives_the_variance() =>
        Gen.Select(Any, Any, Any, Gen.Double[-5, 5]).Sample(
            (x, y, z, c) =>
            {
                var sum = Measured.Covariance(x, z) + (c * Measured.Covariance(y, z));
                Near(sum, Measured.Covariance(x + (c * y), z), 1000);
                Assert.Equal(Measured.Covariance(x, y), Measured.Covariance(y, x));
                Near(x.Variance, Measured.Covariance(x, x), x.Variance);
                Near(x.Variance + y.Variance + (2 * Measured.Covariance(x, y)), (x + y).Variance, 1000);
            },
            iter: Iterations, threads: 1);

    [Fact]
    public void Correlation_lies_between_minus_one_and_one() => Gen.Select(Any, Any).Sample(
        (x, y) =>
        {
            Assert.InRange(Measured.Correlation(x, y), -1, 1);
            if (x.Variance == 0) return;
            Assert.Equal(1, Measured.Correlation(x, 3 * x), 1e-12);
            Assert.Equal(-1, Measured.Correlation(x, -x), 1e-12);
            Assert.Equal(0, Measured.Correlation(x, Measured.Exact(5)));
        },
        iter: Iterations, threads: 1);

    [Fact]
    public void Contributions_stand_in_order_without_repeats_or_zeros() => Gen.Select(Any, Any).Sample(
        (x, y) =>
        {
            var sum = x + y;
            for (var i = 0; i < sum.Contributions.Length; i++)
            {
                Assert.NotEqual(0, sum.Contributions[i].Amount);
                if (i > 0) Assert.True(sum.Contributions[i - 1].Source < sum.Contributions[i].Source);
            }
        },
        iter: Iterations, threads: 1);

    [Fact]
    public void Budget_shares_add_up_to_one_and_squares_to_the_variance() => Any.Sample(
        x =>
        {
            var budget = Budget.Of(x);
            if (x.Variance == 0)
            {
                Assert.Empty(budget);
                return;
            }

            Near(1, budget.Sum(l => l.Share), 1);
            Near(x.Variance, budget.Sum(l => l.StandardUncertainty * l.StandardUncertainty), x.Variance);
            Assert.Equal(x.Contributions.Length, budget.Sum(l => l.Sources));
            Assert.Equal(budget.Count, budget.Select(l => l.Family).Distinct().Count());
            for (var i = 1; i < budget.Count; i++)
                Assert.True(budget[i - 1].StandardUncertainty >= budget[i].StandardUncertainty);
        },
        iter: Iterations, threads: 1);

    [Fact]
    public void Effective_degrees_of_freedom_lie_between_the_least_and_the_sum() => Any.Sample(
        x =>
        {
            var dof = WelchSatterthwaite.EffectiveDegreesOfFreedom(x);
            double least = double.PositiveInfinity, sum = 0;
            foreach (var c in x.Contributions)
            {
                least = Math.Min(least, c.Source.DegreesOfFreedom);
                sum += c.Source.DegreesOfFreedom;
            }

            // Sources of one ensemble share their degrees, whichever of the generated ones comes last.
            Assert.True(dof >= least * (1 - 1e-12), $"{dof} below {least}");
            if (!double.IsInfinity(sum) && sum > 0) Assert.True(dof <= sum * (1 + 1e-12), $"{dof} above {sum}");
        },
        iter: Iterations, threads: 1);
}
