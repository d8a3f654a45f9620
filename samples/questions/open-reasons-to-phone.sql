-- Which notes have an open reason to phone, the most serious first?
SELECT f.file, p.name, p.species, f.date, f.level, f.rule, f.line
FROM read_parquet('shelf/findings/**/*.parquet', hive_partitioning = true) f
JOIN read_parquet('shelf/pets/*.parquet') p ON p.file = f.file
WHERE f.open AND f.level IN ('call', 'urgent')
ORDER BY f.level = 'urgent' DESC, f.date DESC, f.file, f.line, f.rule;
