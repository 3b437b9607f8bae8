// What a person sees and touches on the page, by the names they see.
import { createHash } from "node:crypto";
import { settled } from "./harness.mjs";

export const temperatureChart = (page) => page.locator(".temperatures canvas");
export const bankChart = (page) => page.locator(".bank canvas");

/** Waits until the page shows its answer, the last of its parts has come, and all is drawn. */
export async function ready(page) {
  await page.locator("[data-answer=lead]").waitFor();
  await page.locator("#decide").waitFor();
  await settled(page);
}

/** Waits until the worker has worked everything out, after which nothing moves by itself. */
export const workedOut = (page) => page.locator("[data-decide=status]").getByText("as they stand").waitFor({ timeout: 60_000 });

export const lead = async (page) => (await page.locator("[data-answer=lead]").innerText()).trim();

/** The box in which a number is typed; its accessible name is its label and its unit. */
export const entry = (page, label) => page.getByRole("textbox", { name: new RegExp(`^${label}(,|$)`) });

export const slider = (page, label) => page.getByRole("slider", { name: label, exact: true });

/** The bar with the last change back, forward again, and the pin. */
export const atHand = (page, name) => page.getByRole("group", { name: "Changes" }).getByRole("button", { name: new RegExp(`^${name}`) });

/** Opens a group of inputs unless it stands open. */
export async function openGroup(page, title) {
  const group = page.locator("details.group").filter({ has: page.getByText(title, { exact: true }) });
  if (!(await group.evaluate((element) => element.open))) await group.locator("> summary").click();
  await settled(page);
}

/** Something that differs whenever a chart looks different. */
export async function chartPixels(canvas) {
  await settled(canvas.page());
  return createHash("sha256").update(await canvas.evaluate((element) => element.toDataURL())).digest("hex");
}

export const numbersIn = (text) => (text.match(/\d+(?:\.\d+)?/g) ?? []).map(Number);

/** Waits until a change is kept, which is a moment after it is made. */
export const kept = (page) => page.waitForTimeout(400);
