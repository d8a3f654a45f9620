using HealthNotes.Trials;

// Prints the table of trials with known truth. Usage: trials [NOTES] [SEED] [PART OF A NAME]
const double StandardErrors = 2;
int notes = args.Length > 0 ? int.Parse(args[0]) : 200;
int seed = args.Length > 1 ? int.Parse(args[1]) : 1;
string part = args.Length > 2 ? args[2] : "";
Console.WriteLine($"{notes} notes a series, seed {seed}. Per 100 entries: from watch up / from call up; notes with a false call; delay: median, 90 %.");
Console.WriteLine($"{"series",-58} {"found",-62} {"goal",-36} {"best possible",-13}");
bool all = true;
foreach (Series series in AllSeries.Table.Where(series => series.Name.Contains(part, StringComparison.OrdinalIgnoreCase)))
{
    var outcome = Outcome.Of(series, notes, seed);
    string quiet = series.Quiet is null && series.Found is not null ? "" : $"{outcome.WatchPer100,6:0.00} /{outcome.CallPer100,6:0.00} {outcome.NotesWithCall,5:0.0} %";
    string found = series.Found is { } asked ? $"{Shown(outcome.Median)}, {Shown(outcome.Ninety)} {asked.Unit} ({outcome.Within(asked.Median):0} % by {asked.Median})" : "";
    string goal = $"{series.Quiet?.ToString() ?? series.Found?.ToString()}";
    string best = series.Found?.Best is { } percent ? $"{percent:0} %" : series.Quiet?.BestCall is { } calls ? $"call {calls:0.00}" : "";

    // a goal that lies near the truth is missed by chance in every other run: a miss is more than chance from this on
    string missed = string.Join("; ", outcome.Missed());
    bool byChance = !outcome.Missed(StandardErrors).Any();
    all &= byChance;
    string verdict = missed.Length == 0 ? "holds" : $"{(byChance ? "within chance" : "NOT")}: {missed}";
    Console.WriteLine($"{series.Name,-58} {quiet,-23}{found,-39} {goal,-36} {best,-13} {verdict}{(outcome.Rules.Length == 0 ? "" : $"  [{outcome.Rules}]")}");
}

return all ? 0 : 1;

static string Shown(double delay) => double.IsInfinity(delay) ? "never" : delay.ToString("0.#");
