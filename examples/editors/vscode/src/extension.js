// Starts the language server for plant files.
const { workspace } = require("vscode");
const { LanguageClient } = require("vscode-languageclient/node");

let client;

async function activate() {
  const command = workspace.getConfiguration("tundish").get("path", "tundish");
  client = new LanguageClient(
    "tundish",
    "Tundish",
    { command, args: ["serve"] },
    { documentSelector: [{ language: "plant" }], synchronize: { configurationSection: "tundish", fileEvents: workspace.createFileSystemWatcher("**/*.plant") } },
  );
  await client.start();
}

async function deactivate() {
  if (client) await client.stop();
}

module.exports = { activate, deactivate };
