import { defineAll } from '../define-all.js';
import { LengthField } from '../table/length-field.js';
import { CutMakerElement } from './cut-maker.js';
import { HandOnTrayElement } from './hand-on-tray.js';
import { ListMakerElement } from './list-maker.js';
import { PagePictureElement } from './page-picture.js';
import { PagesMakerElement } from './pages-maker.js';
import { PictureMakerElement } from './picture-maker.js';
import { WebMakerElement } from './web-maker.js';

defineAll({
  'trimwell-length': LengthField,
  'trimwell-page-picture': PagePictureElement,
  'trimwell-pages-maker': PagesMakerElement,
  'trimwell-cut-maker': CutMakerElement,
  'trimwell-list-maker': ListMakerElement,
  'trimwell-picture-maker': PictureMakerElement,
  'trimwell-web-maker': WebMakerElement,
  'trimwell-hand-on-tray': HandOnTrayElement,
});
