/** Writing back into a file, with a file system that does what the browser's does. */
import { describe, expect, it } from "vitest";
import { writeBack } from "../../../taskpane/desk/keep/files.ts";

interface Disk {
  bytes: Uint8Array;
  modified: number;
  permission: PermissionState;
  fails?: string;
  /** Bytes that the disk loses of what is written. */
  loses?: number;
}

function handleOn(disk: Disk): FileSystemFileHandle {
  return {
    name: "Plan.xlsx",
    requestPermission: async () => disk.permission,
    getFile: async () => ({ lastModified: disk.modified, size: disk.bytes.length }),
    createWritable: async () => {
      if (disk.fails) throw new DOMException("", disk.fails);
      let next = disk.bytes;
      return {
        write: async (bytes: Uint8Array) => {
          next = bytes.slice(0, bytes.length - (disk.loses ?? 0));
        },
        close: async () => {
          disk.bytes = next;
          disk.modified += 1;
        },
      };
    },
  } as unknown as FileSystemFileHandle;
}
const old = () => ({ bytes: Uint8Array.of(1, 2, 3), modified: 100, permission: "granted" as const });
const NEW = Uint8Array.of(9, 8, 7, 6);

describe("writing into the opened file (independent: what the disk holds afterwards)", () => {
  it("puts the new content in place and remembers how the file looks then", async () => {
    const disk: Disk = old();
    const saving = await writeBack(handleOn(disk), NEW, { modified: 100, size: 3 });
    expect(saving).toMatchObject({ kind: "written", name: "Plan.xlsx", seen: { modified: 101, size: 4 } });
    expect(disk.bytes).toEqual(NEW);
  });
  it("leaves a file alone that somebody else has written since, unless it is told to", async () => {
    const disk: Disk = { ...old(), modified: 200 };
    expect(await writeBack(handleOn(disk), NEW, { modified: 100, size: 3 })).toMatchObject({ kind: "changed" });
    expect(disk.bytes).toEqual(Uint8Array.of(1, 2, 3));
    expect(await writeBack(handleOn(disk), NEW, { modified: 100, size: 3 }, true)).toMatchObject({ kind: "written" });
  });
  it.each([
    ["NoModificationAllowedError", /another program/],
    ["NotFoundError", /no longer where it was/],
    ["QuotaExceededError", /disk is full/],
    ["UnknownError", /could not write/],
  ])("never calls it saved when the disk says %s", async (fails, why) => {
    const disk: Disk = { ...old(), fails };
    const saving = await writeBack(handleOn(disk), NEW, { modified: 100, size: 3 });
    expect(saving).toMatchObject({ kind: "refused", why: expect.stringMatching(why) });
    expect(disk.bytes).toEqual(Uint8Array.of(1, 2, 3));
  });
  it("never calls it saved without permission, or when less arrived than was written", async () => {
    expect(await writeBack(handleOn({ ...old(), permission: "denied" }), NEW, undefined)).toMatchObject({
      kind: "refused",
    });
    expect(await writeBack(handleOn({ ...old(), loses: 1 }), NEW, undefined)).toMatchObject({
      kind: "refused",
      why: expect.stringMatching(/not complete/),
    });
  });
});
