import { describe, expect, it } from "vitest";
import { Cache } from "../src/cache.ts";

describe("the memory with a name and an end", () => {
  it("makes a thing once, and again when it was forgotten", () => {
    const cache = new Cache<number, string>("test", 4);
    let made = 0;
    const get = (key: number) =>
      cache.get(key, () => {
        made++;
        return `thing ${key}`;
      });
    expect([get(1), get(1), get(2)]).toEqual(["thing 1", "thing 1", "thing 2"]);
    expect(made).toBe(2);
    for (const key of [3, 4, 5]) get(key);
    expect(get(1)).toBe("thing 1"); // gone with the fifth: the one not asked for longest
    expect(made).toBe(6);
  });
  it("never keeps more than it may, nor less than three quarters of it once it was full", () => {
    const cache = new Cache<number, number>("test", 100);
    for (let i = 0; i < 1000; i++) {
      cache.get(i, () => i);
      expect(cache.size).toBeLessThanOrEqual(100);
      if (i >= 100) expect(cache.size).toBeGreaterThan(75);
    }
  });
  it("keeps what is asked for again and again", () => {
    const cache = new Cache<number, number>("test", 8);
    let made = 0;
    for (let i = 1; i < 100; i++) {
      cache.get(0, () => made++);
      cache.get(i, () => i);
    }
    expect(made).toBe(1);
  });
  it("goes on where it may keep one thing only", () => {
    const cache = new Cache<number, number>("test", 1);
    expect([1, 2, 1].map((key) => cache.get(key, () => key))).toEqual([1, 2, 1]);
    expect(cache.size).toBe(1);
  });
});
