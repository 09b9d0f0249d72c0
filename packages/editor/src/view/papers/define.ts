import { defineAll } from '../define-all.js';
import { LengthField } from '../table/length-field.js';
import { PaperLookElement } from './look-form.js';
import { MixesElement } from './mixes.js';
import { PaperFormElement } from './paper-form.js';
import { PapersElement } from './papers.js';
import { SheetPhotoElement } from './photo-form.js';
import { RemoveFormElement } from './remove-form.js';

defineAll({
  'trimwell-length': LengthField,
  'trimwell-remove-form': RemoveFormElement,
  'trimwell-sheet-photo': SheetPhotoElement,
  'trimwell-paper-look': PaperLookElement,
  'trimwell-paper-form': PaperFormElement,
  'trimwell-mixes': MixesElement,
  'trimwell-papers': PapersElement,
});
