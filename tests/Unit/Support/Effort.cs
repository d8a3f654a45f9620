using System.Globalization;
using CsCheck;

namespace HealthNotes.Tests.Support;

/// <summary>
/// Random tests. Without a setting each run draws the same cases, so a commit that passes here passes everywhere.
/// <c>HNOTE_EFFORT=50</c> draws new ones, fifty times as many; <c>CsCheck_Seed</c> and <c>CsCheck_Time</c> draw as CsCheck says.
/// </summary>
public static class Effort
{
    private static readonly int? Factor =
        int.TryParse(Environment.GetEnvironmentVariable("HNOTE_EFFORT"), NumberStyles.None, CultureInfo.InvariantCulture, out int factor) ? Math.Max(1, factor) : null;

    private static readonly bool DrawsAnew = Factor is not null || Is("CsCheck_Seed") || Is("CsCheck_Time");

    public static int Times(int iterations) => iterations * (Factor ?? 1);

    /// <summary>The check holds for each value drawn. A failure is drawn again by CsCheck, which makes it small and tells its seed.</summary>
    public static void ForAll<T>(this Gen<T> values, Action<T> check, int iter = 100)
    {
        if (DrawsAnew)
        {
            values.Sample(check, iter: iter);
            return;
        }

        var random = new PCG(1, 20_261_130);
        for (int round = 0; round < iter; round++)
        {
            string seed = random.ToString();
            try
            {
                check(values.Generate(random, null, out _));
            }
            catch (Exception)
            {
                values.Sample(check, seed: seed, iter: iter);
                throw;
            }
        }
    }

    /// <inheritdoc cref="ForAll{T}(Gen{T}, Action{T}, int)"/>
    public static void ForAll<T>(this Gen<T> values, Func<T, bool> holds, int iter = 100) =>
        values.ForAll(value => Assert.True(holds(value), $"not so for {Print(value)}"), iter);

    /// <inheritdoc cref="ForAll{T}(Gen{T}, Action{T}, int)"/>
    public static void ForAll<T1, T2>(this Gen<(T1, T2)> values, Action<T1, T2> check, int iter = 100) =>
        values.ForAll(value => check(value.Item1, value.Item2), iter);

    /// <inheritdoc cref="ForAll{T}(Gen{T}, Action{T}, int)"/>
    public static void ForAll<T1, T2>(this Gen<(T1, T2)> values, Func<T1, T2, bool> holds, int iter = 100) =>
        values.ForAll(value => holds(value.Item1, value.Item2), iter);

    /// <inheritdoc cref="ForAll{T}(Gen{T}, Action{T}, int)"/>
    public static void ForAll<T1, T2, T3>(this Gen<(T1, T2, T3)> values, Action<T1, T2, T3> check, int iter = 100) =>
        values.ForAll(value => check(value.Item1, value.Item2, value.Item3), iter);

    /// <inheritdoc cref="ForAll{T}(Gen{T}, Action{T}, int)"/>
    public static void ForAll<T1, T2, T3, T4>(this Gen<(T1, T2, T3, T4)> values, Action<T1, T2, T3, T4> check, int iter = 100) =>
        values.ForAll(value => check(value.Item1, value.Item2, value.Item3, value.Item4), iter);

    private static string Print<T>(T value) => Check.Print(value);

    private static bool Is(string setting) => Environment.GetEnvironmentVariable(setting) is { Length: > 0 };
}
