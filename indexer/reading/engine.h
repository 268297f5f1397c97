// Scans on disk, read by the OCR engine that is installed on the machine: tesseract, and pdftoppm for a PDF. Both are
// looked for when they are needed, and run without a shell and for a bounded time. Internal to the room.
#pragma once

#include <string>
#include <vector>

#include "indexer/fault/fault.h"
#include "indexer/reading/scan.h"

namespace gallipot {

/// The pages of a folder of images (png, jpg, jpeg, tif, tiff, pnm, webp), in order of their names, or of a PDF. An
/// image beside which its hOCR lies ("leaf-12.hocr", "leaf-12.hocr.html") is not read again, and a folder may hold
/// nothing but hOCR and ALTO files. Faults: nothing to read there, more pages than a book has, the engine is not
/// installed (with the package's name), it failed or took too long on a page.
Outcome<std::vector<ScanPage>> pages_of_scans(const std::string& path);

}  // namespace gallipot
