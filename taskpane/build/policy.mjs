// Content security policies. Each page carries its own in a <meta>; what only a header can say is added by the server.

/**
 * Pages that may show the pane in a frame: Excel on the web and where workbooks are opened from. Read in public threads
 * of the add-in platform (no complete list is published); Excel on a PC or a Mac shows the pane without a frame.
 */
const EXCEL_ON_THE_WEB = [
  "https://*.officeapps.live.com",
  "https://*.sharepoint.com",
  "https://onedrive.live.com",
  "https://*.office.com",
  "https://*.microsoft365.com",
  "https://*.cloud.microsoft",
];
/** Where Office's own script comes from when dist does not bring it along. */
export const OFFICE = "https://appsforoffice.microsoft.com";

/** The policy that a page states in its head. */
export function policyOf(page) {
  const policy = /http-equiv="Content-Security-Policy"\s+content="([^"]+)"/.exec(page)?.[1];
  if (policy === undefined) throw new Error("the page states no content security policy");
  return policy;
}

/** The policy of a page as a header: what it states itself, and who may show it in a frame. */
export function headerOf(name, page) {
  const ancestors = name === "taskpane.html" ? ["'self'", ...EXCEL_ON_THE_WEB] : ["'none'"];
  return `${policyOf(page)}; frame-ancestors ${ancestors.join(" ")}`;
}

/** What a server should send with the files of dist, for whoever sets one up. */
export function serverNotes(page) {
  return `What your server should send with these files (npm start sends the same):

/taskpane.html   Content-Security-Policy: ${headerOf("taskpane.html", page("taskpane.html"))}
/desk.html       Content-Security-Policy: ${headerOf("desk.html", page("desk.html"))}
/functions.json  Access-Control-Allow-Origin: *      (Excel on the web fetches it from a page of its own)
/assets/*        Cache-Control: public, max-age=86400
everything       X-Content-Type-Options: nosniff

The pages state their policy themselves; "frame-ancestors", who may show a page in a frame, only a server can state. Excel on
the web shows the pane from the addresses in the first line; take away those that your shop does not use.
`;
}
