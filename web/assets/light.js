// @ts-check
// Lights in the picture what the option under the pointer or the focus brings, or shows
// dashed where it would go, by a rule of style: it holds whatever is drawn anew.

/** @param {Document} doc */
export function light(doc) {
  const style = new CSSStyleSheet();
  doc.adoptedStyleSheets.push(style);
  let lit = "";
  /** @param {Event} e */
  const show = (e) => {
    const at = e.target instanceof Element ? e.target.closest(".option") : null;
    const row = at || doc.activeElement?.closest(".option");
    const id = row ? row.id.replace(/^row-/, "") : "";
    if (id === lit) return;
    lit = id;
    const part = `.view [data-part="${CSS.escape(id)}"] :is(path, circle)`;
    const ghost = `.view [data-ghost="${CSS.escape(id)}"]`;
    style.replaceSync(
      id ? `${part} { stroke: var(--accent); stroke-width: 2.2; } ${ghost} { display: inline; }` : "",
    );
  };
  doc.addEventListener("pointermove", show);
  doc.addEventListener("focusin", show);
}
