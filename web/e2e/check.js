// Runs the accessibility engine over the page as it stands, for the browser tests.
// Nearly all of its time goes into contrast, so that is looked at once for all texts
// that look alike: the same color, size and weight over the same backgrounds. Where
// something may lie beneath a text that is not around it, each one is looked at.
// Where rules of the engine's are named it keeps to those.
window.__check = async (...rules) => {
  let alone = 0;
  const layers = new Map();

  // beneath tells what lies under the contents of an element.
  const beneath = (el) => {
    if (!el) return "";
    if (!layers.has(el)) {
      const s = getComputedStyle(el);
      const around = beneath(el.parentElement);
      const opaque = s.backgroundColor.startsWith("rgb(") && s.opacity === "1";
      const apart = ["absolute", "fixed", "sticky"].includes(s.position) || s.transform !== "none";
      const own = [s.backgroundColor, s.backgroundImage, s.opacity, s.filter, s.mixBlendMode];
      own.push(!opaque && apart && ++alone);
      layers.set(el, `${own}/${around}`);
    }
    return layers.get(el);
  };

  const look = (el) => {
    const s = getComputedStyle(el);
    const ink = [s.color, s.webkitTextFillColor, s.fontSize, s.fontWeight, s.textShadow, s.visibility];
    return [...ink, el.matches(":disabled"), beneath(el)].join();
  };

  const looks = new Map(); // one element of each
  for (const el of document.body.querySelectorAll("*")) {
    const text = [...el.childNodes].some((n) => n.nodeType === Node.TEXT_NODE && n.data.trim());
    const written = text || el.matches("input, select, textarea");
    if (!written || !el.getClientRects().length) continue;
    const what = look(el);
    if (!looks.has(what)) looks.set(what, el);
  }
  const marked = [...looks.values()];
  for (const el of marked) el.dataset.look = "";
  axe.configure({ rules: [{ id: "color-contrast", selector: "[data-look]" }] });
  const options = { resultTypes: ["violations"], selectors: false };
  if (rules.length) options.runOnly = { type: "rule", values: rules };
  const { violations } = await axe.run(document, options);
  for (const el of marked) delete el.dataset.look;
  const said = (n) => `${n.html.slice(0, 160)} – ${(n.any[0] || n.all[0] || n.none[0] || {}).message}`;
  return violations.map((v) => ({ ID: v.id, Help: v.help, Nodes: v.nodes.slice(0, 3).map(said) }));
};
