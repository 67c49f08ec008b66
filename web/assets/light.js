// @ts-check
// Lights in the picture what the option under the pointer or the focus brings.

/** @param {Document} doc */
export function light(doc) {
  let lit = "";
  /** @param {Event} e */
  const show = (e) => {
    const row = e.target instanceof Element ? e.target.closest(".option") : null;
    const id = row ? row.id.replace(/^row-/, "") : "";
    if (id === lit) return;
    lit = id;
    for (const part of /** @type {NodeListOf<SVGGElement>} */ (doc.querySelectorAll(".view [data-part]")))
      part.classList.toggle("lit", part.dataset.part === id);
  };
  doc.addEventListener("pointerover", show);
  doc.addEventListener("focusin", show);
}
