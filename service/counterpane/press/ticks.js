// What is ticked and counted on this page stays in this browser, under the name of the pattern.
(() => {
  const name = "rows of " + document.documentElement.dataset.pattern;
  const fields = document.querySelectorAll("input[id]");
  let kept = {};
  try { kept = JSON.parse(localStorage.getItem(name) || "{}"); } catch { kept = {}; }
  for (const field of fields) {
    const box = field.type === "checkbox";
    if (field.id in kept) { if (box) { field.checked = kept[field.id]; } else { field.value = kept[field.id]; } }
    field.addEventListener("change", () => {
      kept[field.id] = box ? field.checked : field.value;
      try { localStorage.setItem(name, JSON.stringify(kept)); } catch { /* This browser keeps nothing. */ }
    });
  }
})();
