using BenchmarkDotNet.Running;
using HealthNotes.Benchmarks;

// dotnet run -c Release --project tests/Benchmarks -- --filter '*'
BenchmarkSwitcher.FromAssembly(typeof(NoteBenchmarks).Assembly).Run(args);
