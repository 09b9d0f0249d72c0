export { guideSheets, sheetName } from './guide-scene.js';
export { nameLetters } from './name-letters.js';
export { loadPictureFonts, PICTURE_FAMILIES } from './picture-fonts.js';
export {
  PICTURE_SIDE,
  PICTURE_SIZES,
  PICTURE_SIZES_ALLOWED,
  type PictureSize,
  type PictureSizeName,
  readPictureSize,
} from './picture-size.js';
export { PICTURE_SUBJECTS, type PictureSubject } from './scene.js';
export { type PictureFont, type PictureOptions, writePicture } from './write-picture.js';
