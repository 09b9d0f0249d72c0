/** What is for pages: fields with a type and methods with a description that are not private. */
function isPublic({ kind, name, privacy, description, type }) {
  if (privacy !== undefined || name.startsWith('#')) return false;
  return kind === 'method' ? description !== undefined : type !== undefined;
}

/**
 * `custom-elements.json` describes the element that pages use, and nothing of the parts that it is made of. Written by
 * `pnpm manifest`; the check compares it.
 */
export default {
  globs: ['src/view/editor.ts'],
  outdir: '.',
  litelement: true,
  packagejson: false,
  plugins: [
    {
      name: 'only what is public',
      packageLinkPhase({ customElementsManifest }) {
        for (const { declarations = [] } of customElementsManifest.modules)
          for (const declaration of declarations) declaration.members = (declaration.members ?? []).filter(isPublic);
      },
    },
  ],
};
