-- Whose check, weighing or visit is overdue, and by how many days?
SELECT d.file, p.name, d.kind, d.due_on, d.days_late
FROM read_parquet('shelf/due/**/*.parquet', hive_partitioning = true) d
JOIN read_parquet('shelf/pets/*.parquet') p ON p.file = d.file
WHERE d.kind IN ('check', 'weighing', 'visit') AND d.days_late > 0
ORDER BY d.days_late DESC, d.file, d.kind;
