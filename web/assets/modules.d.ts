// What the scripts import that has no types of its own, and what one script
// leaves for another.
declare module "idiomorph/dist/idiomorph.esm.js" {
  export const Idiomorph: {
    morph(node: Node, to: Node | Node[], options: object): void;
  };
}

declare module "*.html" {
  const text: string;
  export default text;
}

// What early.js leaves for app.js.
interface Early {
  version: string; // of the folder form; empty in the single file
  worker?: Worker; // on its way with the core
  heard: Event[]; // what the worker said meanwhile
  pressed?: Event[]; // until the page attends to what is pressed
}

interface Window {
  early?: Early;
  boxwrightOffice?: typeof import("./office.js"); // once loaded
}
