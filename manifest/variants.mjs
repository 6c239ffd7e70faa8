// Writes the two manifests a workspace can install from their one source.
import { readFileSync, writeFileSync } from 'node:fs';
import { parseDocument } from 'yaml';

/** Where a server over HTTP answers; the person who installs puts their own host here. */
const EXAMPLE_URL = 'https://kitchen.example.com/slack/events';
/** Where a browser comes back to when a workspace installs the app itself. */
const EXAMPLE_REDIRECT = 'https://kitchen.example.com/slack/oauth_redirect';

const read = (name) => readFileSync(new URL(name, import.meta.url), 'utf8');

function variant(firstLine, change) {
  const manifest = parseDocument(read('source.yaml'));
  // The note to whoever edits the source is not for whoever installs.
  manifest.contents.items[0].key.commentBefore = undefined;
  manifest.contents.commentBefore = undefined;
  manifest.commentBefore = ` ${firstLine}\n Made from source.yaml by variants.mjs.`;
  change(manifest);
  return manifest.toString({ lineWidth: 120 });
}

/** File name to content of every manifest. */
export function variants() {
  return {
    'socket-mode.yaml': variant('Batchbell over Socket Mode: no public address is needed.', (manifest) => {
      manifest.setIn(['settings', 'socket_mode_enabled'], true);
    }),
    'http.yaml': variant('Batchbell over HTTP: put your own host in all addresses.', (manifest) => {
      manifest.setIn(['oauth_config', 'redirect_urls'], [EXAMPLE_REDIRECT]);
      manifest.setIn(['features', 'slash_commands', 0, 'url'], EXAMPLE_URL);
      manifest.setIn(['settings', 'event_subscriptions', 'request_url'], EXAMPLE_URL);
      manifest.setIn(['settings', 'interactivity', 'request_url'], EXAMPLE_URL);
      manifest.setIn(['settings', 'socket_mode_enabled'], false);
    }),
  };
}

if (process.argv[1] === new URL(import.meta.url).pathname) {
  for (const [name, text] of Object.entries(variants())) writeFileSync(new URL(name, import.meta.url), text);
}
