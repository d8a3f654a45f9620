using HealthNotes.Cli;

return App.Run(args);
