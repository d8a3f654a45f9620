using System.CommandLine;
using HealthNotes.Analysis.Rules;
using HealthNotes.Cli.Output;
using HealthNotes.Files;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Cli.Commands;

/// <summary><c>hnote about RULE</c></summary>
internal static class AboutCommand
{
    public static Command Create()
    {
        var rule = new Argument<string?>("rule") { HelpName = "rule", Description = "The name printed with a finding; without it, all rules are listed", Arity = ArgumentArity.ZeroOrOne };
        rule.CompletionSources.Add(_ => RuleHelp.Names.Select(name => new System.CommandLine.Completions.CompletionItem(name)));
        var command = new Command("about", "Show what a rule checks, why, and which source it relies on") { rule };
        command.SetAction(parsed => Run(parsed.GetValue(rule), parsed.InvocationConfiguration.Output));
        return command;
    }

    private static int Run(string? rule, TextWriter output)
    {
        if (rule is null)
        {
            foreach (string name in RuleHelp.Names)
            {
                output.WriteLine(name);
            }

            return ExitCodes.Fine;
        }

        if (RuleHelp.For(rule) is not { } help)
        {
            string? nearest = NearestWord.Find(rule, RuleHelp.Names);
            throw new RefusedException($"unknown rule `{rule}`" + (nearest is null ? "; hnote about lists all rules" : $"; did you mean `{nearest}`?"));
        }

        output.WriteLine(help.TrimEnd());
        return ExitCodes.Fine;
    }
}
