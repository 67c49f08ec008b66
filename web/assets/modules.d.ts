// What the scripts import that has no types of its own.
declare module "idiomorph/dist/idiomorph.esm.js" {
  export const Idiomorph: {
    morph(node: Node, html: string, options: object): void;
  };
}

declare module "*.html" {
  const text: string;
  export default text;
}
