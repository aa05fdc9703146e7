import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { unpackCircuit } from "../../electron/pack/pack.ts";
import { formatCircuit } from "../../schemas/circuit.ts";
import { openSample } from "./acts.ts";
import { photograph } from "./printedFiles.ts";
import { expect, story } from "./story.ts";
import { openView } from "./views.ts";

const PLACE = "Lift the entrance step off the fuse box";

story("a place gets a photo, which is shown in the order, travels, and can be taken away", async ({ program }) => {
  const field = () => program.page.getByRole("group", { name: `Photo of ${PLACE}` });
  const photo = () => field().getByRole("button", { name: `Photo: ${PLACE}` });
  const openPlace = async (): Promise<void> => {
    await openView(program.page, "Circuit");
    await program.page.locator(".access summary", { hasText: PLACE }).click();
  };
  /** A file of the page's own making, pasted or dropped where the photo goes. */
  const give = (kind: "paste" | "drop", bytes: Buffer, type: string): Promise<void> =>
    field().evaluate(
      (target, { kind, base64, type }) => {
        const data = new DataTransfer();
        const bytes = Uint8Array.from(atob(base64), (sign) => sign.charCodeAt(0));
        data.items.add(new File([bytes], "step", { type }));
        const about = { bubbles: true, cancelable: true };
        target.dispatchEvent(
          kind === "paste"
            ? new ClipboardEvent("paste", { clipboardData: data, ...about })
            : new DragEvent("drop", { dataTransfer: data, ...about }),
        );
      },
      { kind, base64: bytes.toString("base64"), type },
    );
  await openSample(program.page, "Roof vents");
  await openPlace();
  const file = join(program.folder, "step.jpg");
  writeFileSync(file, photograph().jpeg);
  // The page's own field for files, in both hosts.
  const [chooser] = await Promise.all([
    program.page.waitForEvent("filechooser"),
    field().getByRole("button", { name: "Add a photo" }).click(),
  ]);
  await chooser.setFiles(file);
  await expect(photo().locator("img")).toHaveJSProperty("naturalWidth", 1_400);
  await program.page.keyboard.press("Control+z");
  await expect(photo()).toHaveCount(0);
  await program.page.keyboard.press("Control+y");
  await expect(photo()).toBeVisible();

  // What is no picture is said beside the field, and the photo stays.
  await give("paste", Buffer.from("no picture at all"), "image/png");
  await expect(field().getByRole("alert")).toContainText("a picture is a PNG, a JPEG or a WebP");
  await expect(photo()).toBeVisible();
  await field().getByRole("button", { name: "Remove the photo" }).click();
  await expect(field().getByRole("button", { name: "Add a photo" })).toBeFocused();
  await give("drop", photograph().jpeg, "image/jpeg");
  await expect(photo().locator("img")).toHaveJSProperty("naturalWidth", 1_400);
  await expect(program.page.getByRole("dialog")).toHaveCount(0);

  // In the order the place shows what it looks like; pressed, it is large.
  await openView(program.page, "Probe order");
  await program.page.getByRole("button", { name: "Middle vent opens from its own switch" }).click();
  const shown = program.page.locator(".place").getByRole("button", { name: `Photo: ${PLACE}` });
  const small = (await shown.boundingBox())!.width;
  await shown.click();
  await expect(shown).toHaveAttribute("aria-expanded", "true");
  expect((await shown.boundingBox())!.width).toBeGreaterThan(2 * small);

  // It outlasts a restart, and goes along in the file; a plain file comes without it and says so.
  const { bytes, name } = await program.saved(() => program.page.keyboard.press("Control+s"));
  expect(name).toMatch(/\.wirefathom$/);
  const packed = unpackCircuit(bytes);
  expect(packed.ok && packed.value.pictures).toHaveLength(1);
  if (!packed.ok) return;
  const plain = join(program.folder, "plain.circuit.json");
  const text = formatCircuit({ ...packed.value.circuit, title: "Plain" });
  writeFileSync(plain, text.replaceAll(packed.value.pictures[0]!.picture.sha256, "ab".repeat(32)));
  await program.page.waitForTimeout(1_000);
  await program.restart();
  await openPlace();
  await expect(photo()).toBeVisible();
  await program.restart(plain);
  await openPlace();
  await expect(field()).toContainText("not in a plain circuit file");
});
