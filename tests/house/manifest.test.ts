import fs from "node:fs";
import path from "node:path";
import { OfficeAddinManifest } from "office-addin-manifest";
import { beforeAll, describe, expect, it } from "vitest";
// @ts-expect-error plain script without types
import { manifestFor } from "../../taskpane/build/manifest.mjs";
import { NEEDS } from "../../taskpane/host/excel/versions.ts";
import { newPage, startBrowser } from "../browser/page.ts";
import { root } from "./files.ts";

interface Node {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: readonly Node[];
  readonly text: string;
}

const template = fs.readFileSync(path.join(root, "manifest.xml"), "utf8");
const { version } = JSON.parse(fs.readFileSync(path.join(root, "package.json"), "utf8")) as { version: string };
/** What the build is told: as on this machine, in a folder of a server, and with pages of the shop. */
const SETTINGS: Readonly<Record<string, { base: string; support?: string; help?: string }>> = {
  "for this machine": { base: "https://localhost:3000" },
  "for a folder of a server": { base: "https://tools.example.org/shop/tablefeed" },
  "with pages for help and support": {
    base: "https://tools.example.org:8443/a&b",
    support: "https://tools.example.org/ask?about=tablefeed&from=excel",
    help: "https://tools.example.org/help",
  },
};
/** Files the build makes, by the entry that they come from. */
const BUILT: Readonly<Record<string, string>> = {
  "taskpane.html": "taskpane/index.html",
  "functions.js": "functions/main.ts",
  "functions.json": "functions/index.ts",
};

const all = (node: Node, name: string): Node[] => [
  ...(node.name === name ? [node] : []),
  ...node.children.flatMap((child) => all(child, name)),
];
const one = (node: Node, name: string): Node => {
  const found = all(node, name);
  expect(found, `<${name}>`).toHaveLength(1);
  return found[0]!;
};
const names = (node: Node): string[] => node.children.map((child) => child.name);

/** Reads well-formed XML as a browser does. */
async function treeOf(text: string): Promise<Node> {
  const browser = await startBrowser();
  const { page } = await newPage(browser);
  const tree = await page.evaluate((xml) => {
    const parsed = new DOMParser().parseFromString(xml, "application/xml");
    const error = parsed.querySelector("parsererror");
    if (error) throw new Error(`not well-formed: ${error.textContent}`);
    const tree = (element: Element): any => ({
      name: element.localName,
      attributes: Object.fromEntries([...element.attributes].map((a) => [a.localName, a.value])),
      children: [...element.children].map(tree),
      text: element.children.length === 0 ? (element.textContent ?? "").trim() : "",
    });
    return tree(parsed.documentElement);
  }, text);
  await browser.close();
  return tree;
}

describe.each(Object.entries(SETTINGS))("the manifest %s (house)", (name, settings) => {
  const text: string = manifestFor(template, { version, ...settings });
  const base = `${settings.base}/`;
  const file = path.join(root, "tests", ".out", `manifest ${name}.xml`);
  let manifest: Node;
  beforeAll(async () => {
    fs.mkdirSync(path.dirname(file), { recursive: true });
    fs.writeFileSync(file, text);
    manifest = await treeOf(text);
  });

  it("is read by the manifest library as what it is", async () => {
    const info = await OfficeAddinManifest.readManifestFile(file);
    expect(info).toMatchObject({
      displayName: "Tablefeed",
      officeAppType: "TaskPaneApp",
      permissions: "ReadWriteDocument",
    });
    expect(info.id).toMatch(/^[0-9a-f]{8}-[0-9a-f]{4}-4[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/);
    expect(info.version).toBe(`${version}.0`);
    expect(info.hosts).toEqual(["Workbook"]);
  });

  it("has its elements in the order the schema asks for", () => {
    expect(names(manifest)).toEqual([
      "Id",
      "Version",
      "ProviderName",
      "DefaultLocale",
      "DisplayName",
      "Description",
      "IconUrl",
      "HighResolutionIconUrl",
      ...(settings.support ? ["SupportUrl"] : []),
      "AppDomains",
      "Hosts",
      "Requirements",
      "DefaultSettings",
      "Permissions",
      "VersionOverrides",
    ]);
    const overrides = one(manifest, "VersionOverrides");
    expect(names(overrides)).toEqual(["Hosts", "Resources"]);
    const host = all(overrides, "Host")[0]!;
    expect(names(host)).toEqual(["Runtimes", "AllFormFactors", "DesktopFormFactor"]);
    expect(names(one(overrides, "Resources"))).toEqual(["Images", "Urls", "ShortStrings", "LongStrings"]);
    expect(names(one(overrides, "DesktopFormFactor"))).toEqual([
      ...(settings.help ? ["GetStarted"] : []),
      "FunctionFile",
      "ExtensionPoint",
    ]);
    expect(names(all(overrides, "ExtensionPoint")[0]!)).toEqual(["Script", "Page", "Metadata", "Namespace"]);
    expect(names(one(overrides, "Control"))).toEqual(["Label", "Supertip", "Icon", "Action"]);
  });

  it("runs pane and functions in one lasting runtime: one resource for Runtime, Page, FunctionFile and the pane", () => {
    const runtime = one(manifest, "Runtime");
    expect(runtime.attributes.lifetime).toBe("long");
    const id = runtime.attributes.resid;
    expect(one(one(manifest, "Page"), "SourceLocation").attributes.resid).toBe(id);
    expect(one(manifest, "FunctionFile").attributes.resid).toBe(id);
    expect(one(one(manifest, "Action"), "SourceLocation").attributes.resid).toBe(id);
    const url = all(manifest, "Url").find((u) => u.attributes.id === id)!.attributes.DefaultValue;
    expect(one(manifest, "DefaultSettings").children[0]!.attributes.DefaultValue).toBe(url);
  });

  it("resolves every resource id, to one thing of the right kind, and declares none in vain", () => {
    const kinds: Record<string, string> = {
      Image: "Image",
      SourceLocation: "Url",
      FunctionFile: "Url",
      Runtime: "Url",
      LearnMoreUrl: "Url",
    };
    const overrides = one(manifest, "VersionOverrides");
    const resources = one(overrides, "Resources");
    const declared = resources.children.flatMap((group) => group.children);
    const ids = declared.map((d) => d.attributes.id!);
    expect(new Set(ids).size).toBe(ids.length);
    const used = new Set<string>();
    const walk = (node: Node): void => {
      const { resid } = node.attributes;
      if (resid !== undefined) {
        used.add(resid);
        expect(resid.length, resid).toBeLessThanOrEqual(32);
        const target = declared.find((d) => d.attributes.id === resid);
        expect(target, resid).toBeDefined();
        expect(target!.name, resid).toBe(kinds[node.name] ?? "String");
      }
      node.children.forEach(walk);
    };
    overrides.children.forEach(walk);
    expect([...used].sort()).toEqual([...ids].sort());
  });

  it("keeps texts and addresses within their limits", () => {
    const [short, long] = ["ShortStrings", "LongStrings"].map((group) => one(manifest, group).children);
    for (const s of short!) expect(s.attributes.DefaultValue!.length, s.attributes.id).toBeLessThanOrEqual(125);
    for (const s of long!) expect(s.attributes.DefaultValue!.length, s.attributes.id).toBeLessThanOrEqual(250);
    const value = (name: string) => manifest.children.find((child) => child.name === name)!;
    expect(value("DisplayName").attributes.DefaultValue!.length).toBeLessThanOrEqual(125);
    expect(value("Description").attributes.DefaultValue!.length).toBeLessThanOrEqual(250);
    expect(value("ProviderName").text.length).toBeLessThanOrEqual(125);
    for (const address of text.match(/https?:\/\/[^"<]*/g) ?? []) expect(address.length).toBeLessThanOrEqual(2048);
  });

  it("gives https addresses only, its own below the base, and names its domain with the scheme and without a path", () => {
    const values: string[] = [];
    const walk = (node: Node): void => {
      const value = node.attributes.DefaultValue ?? node.text;
      if (/^[a-z]+:\/\//i.test(value)) values.push(value);
      node.children.forEach(walk);
    };
    walk(manifest);
    expect(values.length).toBeGreaterThan(8);
    const { origin } = new URL(base);
    for (const value of values)
      if (![origin, settings.support, settings.help].includes(value)) expect(value.startsWith(base), value).toBe(true);
    expect(one(manifest, "AppDomain").text).toBe(origin);
    if (!base.includes("localhost")) expect(text).not.toContain("localhost");
    expect(all(manifest, "SupportUrl").map((s) => s.attributes.DefaultValue)).toEqual(
      settings.support ? [settings.support] : [],
    );
    const help = all(manifest, "Url").filter((u) => u.attributes.id === "Help.Url");
    expect(help.map((u) => u.attributes.DefaultValue)).toEqual(settings.help ? [settings.help] : []);
  });

  it("points to files that exist or that the build makes", () => {
    for (const url of all(manifest, "Url")) {
      if (url.attributes.id === "Help.Url") continue;
      const name = url.attributes.DefaultValue!.slice(base.length);
      const source = BUILT[name];
      expect(source, name).toBeDefined();
      expect(fs.existsSync(path.join(root, source!)), source).toBe(true);
    }
  });

  it("has its icons, in the sizes they are named after", () => {
    const sizes: Record<string, number> = {
      [one(manifest, "IconUrl").attributes.DefaultValue!]: 32,
      [one(manifest, "HighResolutionIconUrl").attributes.DefaultValue!]: 64,
    };
    const images = all(one(manifest, "Images"), "Image");
    for (const group of all(manifest, "Icon")) {
      expect(group.children.map((image) => image.attributes.size)).toEqual(["16", "32", "80"]);
      for (const { attributes } of group.children) {
        const url = images.find((image) => image.attributes.id === attributes.resid)!.attributes.DefaultValue!;
        expect(sizes[url] ?? Number(attributes.size)).toBe(Number(attributes.size));
        sizes[url] = Number(attributes.size);
      }
    }
    expect(Object.keys(sizes)).toHaveLength(4);
    for (const [url, size] of Object.entries(sizes)) {
      const png = fs.readFileSync(path.join(root, "taskpane", url.slice(base.length)));
      expect(png.subarray(1, 4).toString(), url).toBe("PNG");
      expect([png.readUInt32BE(16), png.readUInt32BE(20)], url).toEqual([size, size]);
    }
  });

  it("calls the namespace CUT, and asks for the requirement sets the code needs", () => {
    const id = one(manifest, "Namespace").attributes.resid;
    expect(all(manifest, "String").find((s) => s.attributes.id === id)!.attributes.DefaultValue).toBe("CUT");
    const sets = all(manifest, "Set").map(({ attributes }) => [attributes.Name, attributes.MinVersion]);
    expect(Object.fromEntries(sets)).toEqual(NEEDS);
  });
});

describe("the page of the pane (house)", () => {
  it("agrees with the page: it leaves a place for office.js, before the functions, before the pane", () => {
    const page = fs.readFileSync(path.join(root, "taskpane", "index.html"), "utf8");
    const places = ["<!-- office.js -->", 'src="functions.js"', 'src="taskpane.js"'].map((part) => page.indexOf(part));
    expect(places.every((at) => at > 0)).toBe(true);
    expect([...places].sort((a, b) => a - b)).toEqual(places);
    expect(page).not.toMatch(/src="functions.js"[^>]*(?:defer|module|async)/);
  });
});
