"use strict";
// Checks while one types, by the same check that saving asks.
{
  const form = document.getElementById("sheet");
  const text = document.getElementById("text");
  const said = document.getElementById("said");
  const list = document.getElementById("findings");
  let timer = 0;
  let asked = 0;

  const go = line => {
    const lines = text.value.split("\n");
    const start = lines.slice(0, line - 1).reduce((sum, one) => sum + one.length + 1, 0);
    text.focus();
    text.setSelectionRange(start, start + (lines[line - 1] ?? "").length);
    text.scrollTop = (line - 4) * parseFloat(getComputedStyle(text).lineHeight);
  };

  const element = (name, content) => {
    const one = document.createElement(name);
    one.textContent = content;
    return one;
  };

  const show = check => {
    said.textContent = check.summary;
    said.classList.toggle("trouble", !check.isGood);
    list.replaceChildren(...check.lines.map(line => {
      const item = document.createElement("li");
      const button = element("button", `Line ${line.line}`);
      button.type = "button";
      button.dataset.line = line.line;
      item.append(button, element("strong", line.isError ? "✕ error" : "△ doubtful"), element("span", line.text));
      return item;
    }));
  };

  const check = async () => {
    const mine = ++asked;
    try {
      const answer = await fetch("/sheets/check", { method: "POST", body: new URLSearchParams(new FormData(form)) });
      if (answer.ok && mine === asked) {
        show(await answer.json());
      }
    } catch {
      said.textContent = "The check does not answer: is `loggerbox serve` still running?";
    }
  };

  text.addEventListener("input", () => { clearTimeout(timer); timer = setTimeout(check, 400); });
  list.addEventListener("click", event => { if (event.target.dataset.line) { go(+event.target.dataset.line); } });
}
