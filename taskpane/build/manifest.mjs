// The manifest for one address: the template says what the add-in is, the build says where it lives and its version.

const TEMPLATE_BASE = "https://localhost:3000";
const xml = (text) => text.replace(/&/g, "&amp;").replace(/"/g, "&quot;").replace(/</g, "&lt;");

/**
 * @param template - text of manifest.xml
 * @param settings - base: address of dist; version: of package.json; support, help: pages of the shop, where it has them
 */
export function manifestFor(template, { base, version, support, help }) {
  if (!/^\d+\.\d+\.\d+$/.test(version)) throw new Error(`version "${version}" is not three numbers`);
  let text = template
    .replace(/<Version>[^<]*<\/Version>/, `<Version>${version}.0</Version>`)
    .replaceAll(`<AppDomain>${TEMPLATE_BASE}</AppDomain>`, `<AppDomain>${xml(new URL(base).origin)}</AppDomain>`)
    .replaceAll(`"${TEMPLATE_BASE}`, `"${xml(base)}`);
  // Excel shows the support address in the add-in's menu, and the other one in the box it opens after the first start.
  if (support !== undefined)
    text = text.replace(/( *)<AppDomains>/, `$1<SupportUrl DefaultValue="${xml(support)}"/>\n$&`);
  if (help !== undefined) {
    text = text
      .replace(
        /( *)<FunctionFile /,
        `$1<GetStarted>\n$1  <Title resid="Group.Label"/>\n$1  <Description resid="Open.Tip"/>\n$1  <LearnMoreUrl resid="Help.Url"/>\n$1</GetStarted>\n$&`,
      )
      .replace(/( *)<\/bt:Urls>/, `$1  <bt:Url id="Help.Url" DefaultValue="${xml(help)}"/>\n$&`);
  }
  return text;
}
