/** Files that hold printed pages, as a field for files takes them. */
const ACCEPTED = ".pdf,.png,.jpg,.jpeg,.webp,application/pdf,image/png,image/jpeg,image/webp";

/** Has the person choose files with printed pages in the browser's own field; told only where some were chosen. */
export function choosePrinted(take: (files: readonly File[]) => void): void {
  const field = document.createElement("input");
  field.type = "file";
  field.multiple = true;
  field.accept = ACCEPTED;
  field.addEventListener("change", () => {
    if (field.files?.length) take([...field.files]);
  });
  field.click();
}
