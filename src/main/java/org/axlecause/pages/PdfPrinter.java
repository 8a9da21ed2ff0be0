package org.axlecause.pages;

import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FontStyle;
import com.openhtmltopdf.pdfboxout.PdfBoxRenderer;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import com.openhtmltopdf.svgsupport.BatikSVGDrawer;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;

/** Prints a page as PDF; the same page gives the same bytes. */
final class PdfPrinter {

    private static final DateTimeFormatter PDF_DATE =
            DateTimeFormatter.ofPattern("'D:'uuuuMMddHHmmss'Z'").withZone(ZoneOffset.UTC);
    private static final int REGULAR = 400;
    private static final int BOLD = 700;
    private static final String NOWHERE = "about:blank";

    private PdfPrinter() {}

    /**
     * The PDF of a page.
     *
     * @param html well-formed XHTML that refers to nothing outside itself
     * @param date when what it shows last changed
     */
    static byte[] print(String html, Instant date) {
        PdfRendererBuilder builder = new PdfRendererBuilder();
        builder.useFont(SheetFonts.file(SheetFonts.REGULAR), SheetFonts.FAMILY, REGULAR, FontStyle.NORMAL, true);
        builder.useFont(SheetFonts.file(SheetFonts.BOLD), SheetFonts.FAMILY, BOLD, FontStyle.NORMAL, true);
        builder.useUriResolver((base, address) -> null);
        builder.usePdfUaAccessibility(true);
        builder.withHtmlContent(html, NOWHERE);
        try (BatikSVGDrawer drawer = new BatikSVGDrawer()) {
            builder.useSVGDrawer(drawer);
            return print(builder, html, date);
        } catch (IOException broken) {
            throw new UncheckedIOException("The sheet can't be printed", broken);
        }
    }

    private static byte[] print(PdfRendererBuilder builder, String html, Instant date) throws IOException {
        try (PdfBoxRenderer renderer = builder.buildPdfRenderer();
                ByteArrayOutputStream out = new ByteArrayOutputStream()) {
            renderer.createPDFWithoutClosing();
            try (PDDocument document = renderer.getPdfDocument()) {
                document.getDocumentInformation()
                        .getCOSObject()
                        .setString(COSName.CREATION_DATE, PDF_DATE.format(date));
                document.setDocumentId((long) html.hashCode());
                document.save(out);
            }
            return out.toByteArray();
        }
    }
}
