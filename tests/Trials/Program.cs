using HealthNotes.Trials;

// Prints the table of trials with known truth. Usage: trials [NOTES] [SEED] [PART OF A NAME]
int notes = args.Length > 0 ? int.Parse(args[0]) : 200;
int seed = args.Length > 1 ? int.Parse(args[1]) : 1;
string part = args.Length > 2 ? args[2] : "";
Console.WriteLine($"{notes} notes a series, seed {seed}. Per 100 entries: from watch up / from call up; notes with a false call; delay: median, 90 %.");
bool all = true;
foreach (Series series in AllSeries.Table.Where(series => series.Name.Contains(part, StringComparison.OrdinalIgnoreCase)))
{
    var outcome = Outcome.Of(series, notes, seed);
    string quiet = series.Quiet is null && series.Found is not null ? "" : $"{outcome.WatchPer100,6:0.00} /{outcome.CallPer100,6:0.00} {outcome.NotesWithCall,5:0.0} %";
    string found = series.Found is { } goal ? $"{Shown(outcome.Median)}, {Shown(outcome.Ninety)} {goal.Unit} ({outcome.Within(goal.Median):0} % by {goal.Median})" : "";
    string missed = string.Join("; ", outcome.Missed());
    all &= missed.Length == 0 || series.Open is not null;
    Console.WriteLine($"{series.Name,-58} {quiet,-23} {found,-40} {(missed.Length == 0 ? "holds" : "NOT: " + missed)}{(outcome.Rules.Length == 0 ? "" : $"  [{outcome.Rules}]")}");
}

return all ? 0 : 1;

static string Shown(double delay) => double.IsInfinity(delay) ? "never" : delay.ToString("0.#");
