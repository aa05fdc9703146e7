import { expect, it } from "vitest";
import { isLong } from "../long.ts";
import { soak } from "../soak/soak.ts";

const MINUTES = 0.6;

it.skipIf(!isLong)("some rounds of work leave no listener, worker, document or open file behind", async () => {
  const { rounds, grown } = await soak(MINUTES, () => {});
  expect(rounds).toBeGreaterThanOrEqual(8);
  // Caches are still filling: memory is for the ten minutes of `npm run soak`.
  const counted = grown.filter(({ name }) => !name.endsWith("MB"));
  expect(counted.map(({ name }) => name)).toEqual(
    expect.arrayContaining(["page nodes", "page listeners", "page documents", "page workers", "host handles"]),
  );
  expect(counted.filter(({ isFlat }) => !isFlat)).toEqual([]);
});
