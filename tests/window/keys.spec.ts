import { openSample } from "./acts.ts";
import { expect, story } from "./story.ts";

story(
  "everything is done by keys: open, throw, walk, ask why, put a fault in, undo, print",
  { tag: "@both" },
  async ({ program }) => {
    const { page } = program;
    const tabTo = async (name: RegExp): Promise<void> => {
      for (let at = 0; at < 120; at++) {
        await page.keyboard.press("Tab");
        const said = await page.evaluate(() => {
          const now = document.activeElement?.cloneNode(true) as Element | undefined;
          // A picture is drawn a little later, and is no part of the name.
          for (const hidden of now?.querySelectorAll("[aria-hidden=true]") ?? []) hidden.remove();
          return `${now?.getAttribute("aria-label") ?? ""} ${now?.textContent ?? ""}`.trim();
        });
        if (name.test(said)) return;
      }
      throw new Error(`no Tab leads to ${name}`);
    };
    await expect(page.locator(".tile")).toHaveCount(13);
    await tabTo(/^Horn/);
    await page.keyboard.press("Enter");
    await expect(page).toHaveTitle(/Horn/);

    // The drawing: the first point, along the circuit, why, and up to the part.
    await tabTo(/^Drawing of the page/);
    const chosen = page.locator("main [role=status]").first();
    await page.keyboard.press("Home");
    await expect(chosen).toContainText(/powered|grounded|floating/);
    const first = await chosen.textContent();
    await page.keyboard.press("ArrowRight");
    await expect(chosen).not.toHaveText(first ?? "");
    await page.keyboard.press("w");
    await expect(page.getByRole("tooltip")).toContainText(/powered|grounded|floating/);
    await page.keyboard.press("Escape");
    await expect(page.getByRole("tooltip")).toHaveCount(0);

    // A switch: parts one by one until the door switch, thrown by Enter.
    for (let at = 0; at < 40 && !(await chosen.textContent())?.startsWith("S2"); at++)
      await page.keyboard.press("PageDown");
    await expect(chosen).toContainText("S2");
    await page.keyboard.press("Enter");
    await expect(page.locator(".status")).toContainText("S2 open");

    // The horn button is held by its key and let go.
    for (let at = 0; at < 40 && !(await chosen.textContent())?.startsWith("S1"); at++)
      await page.keyboard.press("PageDown");
    await page.keyboard.down("2");
    await page.waitForTimeout(400);
    await expect(page.locator(".status")).toContainText("S1 held pressed");
    await page.keyboard.up("2");
    await expect(page.locator(".status")).not.toContainText("S1 held pressed");

    // A fuse is taken out and put back, and undone twice.
    for (let at = 0; at < 40 && !(await chosen.textContent())?.startsWith("F2"); at++)
      await page.keyboard.press("PageDown");
    await page.keyboard.press("o");
    await expect(page.locator(".status")).toContainText("F2 out");
    await page.keyboard.press("Control+z");
    await expect(page.locator(".status")).not.toContainText("F2 out");

    // A fault by its menu.
    await page.keyboard.press("ContextMenu");
    const menu = page.getByRole("dialog", { name: /F2/ });
    await expect(menu).toBeVisible();
    for (let at = 0; at < 12; at++) {
      if ((await page.evaluate(() => document.activeElement?.textContent)) === "Put this fault in") break;
      await page.keyboard.press("Tab");
    }
    await page.keyboard.press("Enter");
    await expect(menu).toContainText("F2 blown");
    await page.keyboard.press("Escape");

    await page.keyboard.press("Control+p");
    const print = page.getByRole("dialog", { name: "Print" });
    await expect(print).toBeVisible();
    await page.keyboard.press("Escape");
    await expect(print).toBeHidden();
    await expect(page.getByRole("application")).toBeFocused();
    await page.keyboard.press("Control+w");
    await expect(page).toHaveTitle("Wirefathom");
  },
);

story(
  "a key is changed by keys alone, shown wherever it is shown, kept, swapped and given back",
  { tag: "@both" },
  async ({ program }) => {
    await openSample(program.page, "Horn");
    const sheetOf = () => program.page.getByRole("dialog", { name: "Keys and commands" });
    const openSheet = async (words: string): Promise<void> => {
      await program.page.getByRole("application").focus();
      await program.page.keyboard.press("Shift+F1");
      // The sheet is loaded when it is first opened.
      await expect(sheetOf().getByRole("searchbox")).toBeFocused();
      await program.page.keyboard.type(words);
    };
    const tabTo = async (name: string): Promise<void> => {
      const button = sheetOf().getByRole("button", { name, exact: true });
      for (let at = 0; at < 20; at++) {
        await program.page.keyboard.press("Tab");
        if (await button.evaluate((each) => each === document.activeElement)) return;
      }
      throw new Error(`no Tab leads to ${name}`);
    };
    await openSheet("draw wires");
    await tabTo("Change the key of Draw wires; from the terminals that are chosen, several at once");
    const { keyboard } = program.page;
    await keyboard.press("Enter");
    for (const [key, words] of [
      ["Enter", "Enter keeps its meaning"],
      ["Control+Shift+n", "belongs to the browser or the system"],
      ["3", "which keeps it"],
    ] as const) {
      await keyboard.press(key);
      await expect(sheetOf().locator(".key-said")).toContainText(words);
    }
    // Escape gives up the change and leaves the sheet open.
    await keyboard.press("Escape");
    await expect(sheetOf().locator(".key-said")).toHaveText("");
    await keyboard.press("Enter");
    await keyboard.press("g");
    await expect(sheetOf().locator(".key-line kbd")).toHaveText(["G"]);
    await keyboard.press("Escape");
    await expect(sheetOf()).toHaveCount(0);
    await expect(program.page.getByRole("button", { name: "Wire", exact: true })).toHaveAttribute("title", "Wire (G)");
    await keyboard.press("l");
    await expect(program.page.getByRole("button", { name: "Wire", exact: true })).toHaveAttribute(
      "aria-pressed",
      "false",
    );
    await keyboard.press("g");
    await expect(program.page.getByRole("button", { name: "Wire", exact: true })).toHaveAttribute(
      "aria-pressed",
      "true",
    );
    await keyboard.press("Escape");

    await program.restart();
    await openSample(program.page, "Horn");
    await expect(program.page.getByRole("button", { name: "Wire", exact: true })).toHaveAttribute("title", "Wire (G)");
    await openSheet("mirror");
    await tabTo("Change the key of Mirror");
    await program.page.keyboard.press("Enter");
    await program.page.keyboard.press("t");
    await expect(sheetOf().getByRole("status").filter({ hasText: "swap" })).toContainText('T is the key of "Turn"');
    await expect(sheetOf().getByRole("button", { name: "Swap" })).toBeFocused();
    await program.page.keyboard.press("Enter");
    await expect(sheetOf().locator(".key-line").first()).toContainText("T");
    await expect(sheetOf().getByRole("button", { name: "Change the key of Mirror" })).toBeFocused();
    await sheetOf().getByRole("searchbox").fill("turn");
    await expect(
      sheetOf()
        .locator(".key-line", { hasText: /^Turn\b/ })
        .first(),
    ).toContainText("M");
    await sheetOf().getByRole("button", { name: "All given keys" }).click();
    await expect(
      sheetOf()
        .locator(".key-line", { hasText: /^Turn\b/ })
        .first(),
    ).toContainText("T");
    await sheetOf().getByRole("button", { name: "My own keys again" }).click();
    await sheetOf().getByRole("button", { name: "Back to the given key of Turn", exact: true }).click();
    await sheetOf().getByRole("button", { name: "Swap" }).click();
    await sheetOf().getByRole("searchbox").fill("draw wires");
    await sheetOf()
      .getByRole("button", { name: /^Back to the given key/ })
      .click();
    await expect(sheetOf().locator(".key-line kbd")).toHaveText(["L"]);
    await expect(sheetOf().getByRole("button", { name: "All given keys" })).toHaveCount(0);
  },
);

story(
  "Shift F1 and ? open the sheet of keys, which is searched by word and by key, and Escape gives the focus back",
  async ({ program }) => {
    const { page } = program;
    await openSample(page, "Horn");
    const drawing = page.getByRole("application");
    const sheet = page.getByRole("dialog", { name: "Keys and commands" });
    for (const key of ["Shift+F1", "?"]) {
      await drawing.focus();
      await page.keyboard.press(key);
      await expect(sheet).toBeVisible();
      await expect(sheet.getByRole("searchbox")).toBeFocused();
      await page.keyboard.press("Escape");
      await expect(sheet).toHaveCount(0);
      await expect(drawing).toBeFocused();
    }
    await page.getByRole("button", { name: "Settings" }).click();
    await page.getByRole("button", { name: /^Keys and commands/ }).click();
    await sheet.getByRole("searchbox").fill("ctrl d");
    await expect(sheet.locator(".key-line")).toHaveCount(1);
    await expect(sheet.locator(".key-line")).toContainText("Duplicate");
    await sheet.getByRole("searchbox").fill("teapot?");
    await expect(sheet).toContainText("No key and no command is called that.");
    await page.keyboard.press("Escape");
    await expect(page.getByRole("button", { name: "Settings" })).toBeFocused();
    // In a field ? is a sign.
    await page.keyboard.press("Control+f");
    await page.keyboard.type("S?");
    await expect(sheet).toHaveCount(0);
  },
);
