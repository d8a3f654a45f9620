using HealthNotes.Grammar.Formatting;
using HealthNotes.Grammar.Notes;
using HealthNotes.Record.HomeCare;
using HealthNotes.Record.Pet;
using HealthNotes.Record.Readings;
using HealthNotes.Rendering.Text;

namespace HealthNotes.Rendering.Model;

/// <summary>Who the notes are about, on the day they are read.</summary>
internal static class PetCardBuilder
{
    /// <summary>Below this no dose is held against a weight: it is a slip of the pen.</summary>
    private const decimal LeastWeightKg = 0.01m;

    private static readonly string[] ContactWords = ["owner", "vet", "clinic", "phone", "chip"];

    public static PetCard Build(PageContext context)
    {
        PetProfile pet = context.Analysis.Pet;
        DateOnly today = context.Analysis.Today;
        NoteReading? weight = pet.WeightOn(today);
        PetFact[] facts =
        [
            One(PageWords.SpeciesLabel, PageWords.NameOf(pet.Species)),
            One(PageWords.BreedLabel, Field(pet.Breed)),
            One(PageWords.SexLabel, PageWords.Sex(pet.Male, pet.Neutered)),
            One(PageWords.AgeLabel, AgeAndStage(pet, today)),
            One(PageWords.WeightLabel, weight is null ? null : PageWords.OnDay(context.Units.Show(weight.Value), weight.Day)),
            new(PageWords.KnownLabel, Texts(context, "known")),
            new(PageWords.AllergyLabel, Texts(context, "allergy")),
            new(PageWords.MedicinesLabel, Listed(Medicines(context, weight))),
            new(PageWords.LimitsLabel, Listed(Limits(context))),
        ];
        PetFact[] contacts = [.. ContactWords.Select(word => new PetFact(PageWords.ContactLabel(word), Texts(context, word)))];
        return new PetCard(Field(pet.Name), [.. facts.Where(fact => fact.Values.Count > 0)], [.. contacts.Where(fact => fact.Values.Count > 0)]);
    }

    /// <summary>The milligrams a kilogram of a dose, in words, at the weight it is held against; empty when either is not known.</summary>
    public static string PerKilogram(PageContext context, NoteValue? dose, NoteReading? weight) =>
        weight is { Value.Number: >= LeastWeightKg } && DosePerWeight.MilligramsPerKilogram(dose, weight.Value.Number) is { } perKg
            ? PageWords.PerKilogram(perKg, context.Units.Show(weight.Value.Number, weight.Value.Unit))
            : "";

    private static string? AgeAndStage(PetProfile pet, DateOnly today) => pet.AgeOn(today) is not { } age ? null
        : pet.StageOn(today) is { } stage ? PageWords.AgeAndStage(age.ToString(), stage.Name, $"{pet.Born}") : PageWords.AgeAndStage(age.ToString(), null, $"{pet.Born}");

    private static List<string> Texts(PageContext context, string word) => Listed(
        context.Analysis.Note.Facts<TextFact>(context.Analysis.Today)
            .Where(fact => fact.Fact.Word.Word == word)
            .Select(fact => NoteText.Field(fact.Fact.Text.Text)).Distinct());

    /// <summary>The plans that hold today: the latest of each medicine, unless it was stopped or has run out.</summary>
    private static IEnumerable<string> Medicines(PageContext context, NoteReading? weight) =>
        MedicineOrder.On(context.Analysis.Today, context.Analysis.Record).Select(order => NoteText.Field(Plan(order.Plan)) + PerKilogram(context, order.Plan.Dose, weight));

    /// <summary>A plan as it is shown, without its first word.</summary>
    public static string Plan(MedicinePlan plan) => ItemPrinter.Print(plan)[(plan.Word.Word.Length + 1)..];

    /// <summary>The lines that the clinic drew, and the ranges it calls usual.</summary>
    private static IEnumerable<string> Limits(PageContext context) =>
        context.Analysis.Note.Facts<CallIfFact>(context.Analysis.Today).Select(fact => NoteText.Field(ItemPrinter.Print(fact.Fact)))
            .Concat(context.Analysis.Note.Facts<UsualFact>(context.Analysis.Today).Select(fact => NoteText.Field(ItemPrinter.Print(fact.Fact))))
            .Distinct();

    private static List<string> Listed(IEnumerable<string> values)
    {
        List<string> all = [.. values];
        return all.Count <= PageLimits.ListItems ? all : [.. all.TakeLast(PageLimits.ListItems), PageWords.LeftOut(all.Count - PageLimits.ListItems)];
    }

    private static string? Field(string? text) => text is null ? null : NoteText.Field(text);

    private static PetFact One(string label, string? value) => new(label, string.IsNullOrEmpty(value) ? [] : [value]);
}
