// Starts the language server for plant files.
const { commands, window, workspace } = require("vscode");
const { LanguageClient } = require("vscode-languageclient/node");

let client;

// showSheet asks the server for the calculation sheet of the file in front; the
// server has it opened in the browser.
async function showSheet() {
  const editor = window.activeTextEditor;
  if (!client || !editor || editor.document.languageId !== "plant") return;
  const uri = client.code2ProtocolConverter.asUri(editor.document.uri);
  await client.sendRequest("workspace/executeCommand", { command: "tundish.sheet", arguments: [uri] });
}

async function activate(context) {
  const command = workspace.getConfiguration("tundish").get("path", "tundish");
  client = new LanguageClient(
    "tundish",
    "Tundish",
    { command, args: ["serve"] },
    { documentSelector: [{ language: "plant" }], synchronize: { configurationSection: "tundish", fileEvents: workspace.createFileSystemWatcher("**/*.plant") } },
  );
  context.subscriptions.push(commands.registerCommand("tundish.showSheet", showSheet));
  await client.start();
}

async function deactivate() {
  if (client) await client.stop();
}

module.exports = { activate, deactivate };
