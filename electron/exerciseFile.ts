/** Whether a file's name says that it is an exercise. */
export function isExerciseFile(path: string): boolean {
  return path.toLowerCase().endsWith(".exercise.json");
}
