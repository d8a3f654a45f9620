using System.Text.Json;

namespace HealthNotes.Cli.Tests;

/// <summary>The JSON of <c>values</c>, which other programs read.</summary>
public class ValuesContractTests
{
    private const string Opening = "pet Marlow\nspecies dog\nsex male neutered\nborn 2017-03-08\nadult-weight 27kg\n";

    [Theory]
    [InlineData("hr 18/15s", """{"line":7,"date":"2026-10-04","time":null,"what":"hr","site":null,"state":null,"written":"18/15s","value":72,"unit":"/min","low":68,"high":76}""")]
    [InlineData("08:15 rr 8/30s asleep", """{"line":7,"date":"2026-10-04","time":"08:15","what":"rr","site":null,"state":"asleep","written":"8/30s","value":16,"unit":"/min","low":14,"high":18}""")]
    [InlineData("temp 104F rectal", """{"line":7,"date":"2026-10-04","time":null,"what":"temp","site":"rectal","state":null,"written":"104F","value":40,"unit":"Cel","low":null,"high":null}""")]
    [InlineData("weight 83.2-55.9kg", """{"line":7,"date":"2026-10-04","time":null,"what":"weight","site":null,"state":null,"written":"83.2-55.9kg","value":27.3,"unit":"kg","low":null,"high":null}""")]
    [InlineData("crt <2s", """{"line":7,"date":"2026-10-04","time":null,"what":"crt","site":null,"state":null,"written":"<2s","value":2,"unit":"s","low":null,"high":null,"bound":"<"}""")]
    [InlineData("bcs 5/9", """{"line":7,"date":"2026-10-04","time":null,"what":"bcs","site":null,"state":null,"written":"5/9","value":5,"unit":"/9","low":null,"high":null}""")]
    [InlineData("lump L-flank 12x9mm soft", """{"line":7,"date":"2026-10-04","time":null,"what":"lump","site":"L-flank","state":null,"written":"12x9mm","value":12,"unit":"mm","low":null,"high":null}""")]
    [InlineData("lump R-gland3 @lower like pea", """{"line":7,"date":"2026-10-04","time":null,"what":"lump","site":"R-gland3","state":null,"written":"like pea","value":8.5,"unit":"mm","low":7,"high":10,"bound":"~","tag":"lower"}""")]
    [InlineData("glucose 148mg/dL", """{"line":7,"date":"2026-10-04","time":null,"what":"glucose","site":null,"state":null,"written":"148mg/dL","value":8.21492,"unit":"mmol/L","low":null,"high":null}""")]
    [InlineData("water 900ml", """{"line":7,"date":"2026-10-04","time":null,"what":"water","site":null,"state":null,"written":"900ml","value":900,"unit":"mL","low":null,"high":null}""")]
    [InlineData("seizure <5min", """{"line":7,"date":"2026-10-04","time":null,"what":"seizure","site":null,"state":null,"written":"<5min","value":300,"unit":"s","low":null,"high":null,"bound":"<"}""")]
    [InlineData("weight ~12kg", """{"line":7,"date":"2026-10-04","time":null,"what":"weight","site":null,"state":null,"written":"~12kg","value":12,"unit":"kg","low":null,"high":null,"bound":"~"}""")]
    public void One_line_gives_one_value(string line, string expected)
    {
        using var work = new Workspace();
        string path = work.Note($"{Opening}2026-10-04 check\n  {line}\n");
        Outcome outcome = Hnote.Run("values", "--json", "--today", Hnote.Today, path);
        Assert.Equal(0, outcome.Code);
        using var json = JsonDocument.Parse(outcome.Output);
        Assert.Equal(expected, json.RootElement.GetProperty("values")[0].GetRawText());
    }

    [Fact]
    public void Days_of_home_care_are_added_up()
    {
        using var work = new Workspace();
        string path = work.Note($"{Opening}2026-10-04 log\n  weight 20kg\n  08:00 gave benazepril 5mg\n  ate 3/4\n  water 900ml\n  vomit 2x\n2026-10-05 log\n  stool firm\n");
        using var json = JsonDocument.Parse(Hnote.Run("values", "--days", "--json", "--today", Hnote.Today, path).Output);
        JsonElement days = json.RootElement.GetProperty("days");
        Assert.Equal(
            """{"date":"2026-10-04","given":1,"missed":0,"meals":0.75,"water":900,"waterPerKg":45,"pee":0,"stool":0,"vomit":2,"cough":0,"sneeze":0,"seizure":0,"glucoseLow":null,"glucoseHigh":null}""",
            days[0].GetRawText());
        Assert.Equal(2, days.GetArrayLength());
        string table = Hnote.Run("values", "--days", "--today", Hnote.Today, path).Output;
        Assert.Contains("2026-10-04  1              0.75   900 mL  45", table, StringComparison.Ordinal);
    }

    [Fact]
    public void Several_notes_and_folders_print_one_object_a_line_each_with_its_path()
    {
        using var work = new Workspace();
        string one = work.Note($"{Opening}2026-10-04 check\n  weight 20kg\n", "pets/a.hnote");
        string other = work.Note($"{Opening}2026-10-04 check\n  weight 21kg\n", "pets/b.hnote");
        string[] lines = Hnote.Run("values", "--json", "--today", Hnote.Today, Path.GetDirectoryName(one)!).Output.Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal([(one, 20), (other, 21)], lines.Select(line => JsonDocument.Parse(line).RootElement).Select(note => (note.GetProperty("path").GetString()!, note.GetProperty("values")[0].GetProperty("value").GetInt32())));
        Outcome text = Hnote.Run("values", "--today", Hnote.Today, other, one, Path.Combine(work.Folder, "none.hnote"));
        Assert.Equal(2, text.Code);
        Assert.StartsWith(other + "\nMarlow", text.Output, StringComparison.Ordinal);
        Assert.Contains("\n\n" + one + "\n", text.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void The_pet_comes_with_its_age_on_the_day()
    {
        using var work = new Workspace();
        using var json = JsonDocument.Parse(Hnote.Run("values", "--json", "--today", "2026-10-04", work.Note(Opening)).Output);
        JsonElement pet = json.RootElement.GetProperty("pet");
        Assert.Equal("Marlow", pet.GetProperty("name").GetString());
        Assert.Equal("dog", pet.GetProperty("species").GetString());
        Assert.Equal(3497, pet.GetProperty("ageDays").GetInt32()); // 2017-03-08 to 2026-10-04, counted by calendar
        Assert.Equal("large", pet.GetProperty("size").GetString());
    }
}
