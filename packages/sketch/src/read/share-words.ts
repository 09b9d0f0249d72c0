/** A side's four corners or margins, as they mostly are. */
const square = (unit: 'in' | 'mm'): string =>
  `"corners":{"tl":"0 ${unit}","tr":"0 ${unit}","br":"0 ${unit}","bl":"0 ${unit}"},"punched":{},"from":"`;
const margins = (unit: 'in' | 'mm'): string =>
  `"directional":false,"doubleSided":false,"margins":{"top":"0 ${unit}","right":"0 ${unit}","bottom":"0 ${unit}","left":"0 ${unit}"},"gsm":2`;

/**
 * What nearly every sketch says, known to both ends of a link and therefore not in it (a preset dictionary, RFC 1951).
 * What is most used stands last, where it is nearest. Never changed once published: links in the world would be lost;
 * other words take the next letter of packing.
 */
export const SHARE_WORDS = [
  '"trimwell":1,"id":"","title":"","number":"sketch ","credit":"","notes":"","links":[],"supplies":["',
  '{"text":"","address":"https://","price":,"sheets":,"caliper":"","fold":"top","none","face":"inside","fold":"left","base":"',
  '"unit":"mm","card":{"width":"105 mm","height":"148 mm","envelope":{"name":"C6","width":"162 mm","height":"114 mm"}},"papers":[{"id":"',
  '"unit":"in","card":{"width":"4 1/4 in","height":"5 1/2 in","fold":"left","base":"","envelope":{"name":"A2","width":"5 3/4 in","height":"4 3/8 in"}},"papers":[{"id":"',
  '"pattern":"gingham","pattern":"sprig","pattern":"plaid","pattern":"star","pattern":"lettering","pattern":"dot","pattern":"stripe","ground":"#',
  '"kind":"vellum","kind":"foil","kind":"kraft","kind":"other","kind":"patterned paper","width":"12 in","height":"12 in","kind":"cardstock","width":"8 1/2 in","height":"11 in","kind":"cardstock","width":"305 mm","height":"305 mm","width":"210 mm","height":"297 mm",',
  margins('mm'),
  margins('in'),
  '20,"look":{"pattern":"plain","ground":"#ffffff","inks":[],"repeat":"12.7 mm"}},{"repeat":"1/2 in"}},{"id":"',
  '"mixes":[{"id":"mix","name":"","papers":["',
  '"punches":[{"id":"","name":"","profile":"scallop","zigzag","perforated","wave","repeat":"","depth":"","bite":"',
  '"variations":[{"id":"","name":"No ","note":"","edits":[{"do":"describe","do":"order","to":,"do":"add-piece","do":"remove-piece","piece":"","do":"cut-from","from":"","do":"mat","do":"tilt","do":"round","do":"set-paper","do":"alter-piece","do":"place","piece":"","x":"","do":"punch","piece":"","edge":"top","right","bottom","left","punch":null},{"do":"resize","piece":"',
  '"batch":{"cards":"as many as possible","contrast":[],"stoppedCuts":false,"hiddenCentres":false},"variations":[]}',
  '"art":{"motif":"wreath","branch","heart","star","sun","ink":"#","art":{"motif":"words","words":"","ink":"#","locked":true,"hidden":true,',
  '"shape":"ellipse","shape":"banner","shape":"tag","kind":"liner","kind":"banner","kind":"tag","kind":"sentiment","kind":"focal piece","kind":"panel","kind":"strip","kind":"mat","face":"front","shape":"rectangle","x":"',
  square('mm'),
  '","raise":"1 mm","raise":"0 mm","perCard":1,"mats":{"piece":"","reveal":"2 mm","concentric":true}},{"id":"',
  ' 1/16 in","y":" 3/16 in","width":" 5/8 in","height":" 3/8 in","x":"1/8 in","y":"1/8 in","width":"1/4 in","height":"3/4 in","tilt":0,',
  square('in'),
  '","raise":"0 in","perCard":1,"mats":{"piece":"","reveal":"1/8 in"}},{"id":"","name":"","kind":"',
].join('');
