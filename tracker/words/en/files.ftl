### Files that cannot be read at all.

cannot-be-read = { $where }: { $why }
    .means = A file was refused as a whole; the finding beside it says why.
file-refused = { $why }
    .means = A file was refused as a whole, for the reason of the finding beside it; nothing was loaded.
    .hint = Give a workbook that can be read.
file-missing = There is no such file.
    .means = The path names no file.
    .hint = Check the name and the folder.
file-is-folder = This is a folder.
    .means = The path names a folder.
    .hint = Name the workbook inside it.
file-unreadable = { $why ->
        [none] This is a device or a pipe, not a file.
       *[other] The file cannot be read ({ $why }).
    }
    .means = The file may not or cannot be opened.
    .hint = { $why ->
        [none] Name a workbook.
       *[other] Check the name and your rights to the file.
    }
file-empty = { $how ->
        [blanks] The file holds nothing but blanks.
       *[bytes] The file is empty (0 bytes).
    }
    .means = There is nothing in the file.
    .hint = Save or copy the workbook again.
file-too-large = The file has { NUMBER($mib, maximumFractionDigits: 0) } MiB; the limit is { $limit_mib } MiB{ $kind ->
        [text] {" "}for text
       *[any] {""}
    }.
    .means = The file is larger than any loom list.
    .hint = { $kind ->
        [text] Save only the lists, or save them as .xlsx.
       *[any] Save a copy that holds only the lists, without pictures.
    }
not-a-workbook = This is not a workbook but { $kind ->
        [pdf] a PDF
        [picture] a picture
        [archive] an archive
        [zip] a zip archive
        [document] a text document
        [slides] a slide show
        [other-document] another kind of office document
        [database] a database
        [web-page] a web page or XML
        [markup] markup
        [plain-text] plain text under a workbook's name
        [binary-workbook] a binary workbook (.xlsb)
       *[unknown] a file of an unknown kind
    }.
    .means = The content is something else than an xlsx, xls, ods or delimited text, whatever the file's name says.
    .hint = { $kind ->
        [web-page] Open it in a spreadsheet programme and save it as .xlsx.
        [markup] Open it in a spreadsheet programme and save it as .xlsx.
        [binary-workbook] Save it as .xlsx and load that.
        [zip] Unpack it and name the workbook inside.
       *[other] Name an .xlsx, .xls, .ods or .csv file.
    }
password = The workbook is password-protected.
    .means = The workbook is locked or encrypted.
    .hint = Save a copy without the password and load that.
truncated = { $how ->
        [compound] The workbook is cut short or damaged.
       *[archive] The workbook is cut short: its archive has no end.
    }
    .means = The end of the file is missing.
    .hint = Copy or download it again.
damaged = { $how ->
        [twice] The archive holds the part { $part } twice.
        [unusual] The part { $part } is packed in an unusual way.
        [contradiction] The archive contradicts itself about the part { $part }.
        [part] The workbook is damaged in its part { $part }.
        [xml] The workbook is damaged ({ $why }).
        [unread] The workbook cannot be read{ $why ->
            [none] : its parts contradict each other
           *[other] {" "}({ $why })
        }.
        [columns] The text cannot be split into columns ({ $why }).
       *[packing] The workbook is damaged: its archive cannot be unpacked.
    }
    .means = The file breaks the rules of its format.
    .hint = { $how ->
        [columns] Save it as CSV UTF-8 again.
        [part] Get a fresh copy.
        [xml] Get a fresh copy.
        [packing] Get a fresh copy.
       *[other] Open it in a spreadsheet programme and save it again.
    }
encoding = The text is in an unknown encoding.
    .means = No code page fits the bytes of the text file.
    .hint = Save it as CSV UTF-8.
entities = The part { $part } declares a document type or entities, which no workbook needs.
    .means = The XML inside the workbook tries a trick with entities.
    .hint = Open it in a spreadsheet programme and save it again.
zip-bomb = The archive is not what a workbook would be: { $how ->
        [directory] its directory alone has { NUMBER($mib, maximumFractionDigits: 0) } MiB
        [parts] it holds { $parts } parts; the limit is { $limit }
        [ratio] { $part } unpacks { NUMBER($ratio, maximumFractionDigits: 0) } to 1; the limit is { $limit } to 1
        [overlap] the part { $part } overlaps another
       *[undeclared] the part { $part } holds more than it declares
    }.
    .means = The archive would unpack to far more than a workbook holds.
    .hint = Open it in a spreadsheet programme and save it again.
too-large-unpacked = The workbook unpacks to { NUMBER($mib, maximumFractionDigits: 0) } MiB; the limit is { $limit_mib } MiB.
    .means = The workbook holds more than the reader takes.
    .hint = Delete what lies below and beside the lists and save it again.
cells-far-apart = The filled cells reach to { $corner }, { $cells } cells; the limit is { $limit }.
    .means = A sheet's filled cells span a box that no reader can hold.
    .hint = Delete what stands far from the lists and save it again.
too-much-text = The texts of the cells add up to { $chars } characters; the limit is { $limit }.
    .means = A few long texts are repeated in so many cells that no reader can hold them.
    .hint = Shorten the texts that many cells repeat.
