using System.CommandLine;
using HealthNotes.Analysis.Rules;
using HealthNotes.Files;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Cli.Commands;

/// <summary><c>hnote explain RULE</c></summary>
internal static class ExplainCommand
{
    public static Command Create()
    {
        var rule = new Argument<string?>("rule") { HelpName = "rule", Description = "The rule's name, as printed beside a finding; none lists them all", Arity = ArgumentArity.ZeroOrOne };
        rule.CompletionSources.Add(_ => RuleHelp.Names.Select(name => new System.CommandLine.Completions.CompletionItem(name)));
        var command = new Command("explain", "Say what a rule looks for, why, and on whose word") { rule };
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
            throw new RefusedException($"there is no rule `{rule}`" + (nearest is null ? "; hnote explain lists them" : $"; did you mean `{nearest}`?"));
        }

        output.WriteLine(help.TrimEnd());
        return ExitCodes.Fine;
    }
}
