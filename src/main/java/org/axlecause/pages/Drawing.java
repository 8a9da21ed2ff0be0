package org.axlecause.pages;

import java.awt.geom.Rectangle2D;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.Locale;
import java.util.regex.Pattern;
import org.apache.batik.anim.dom.SVGDOMImplementation;
import org.apache.batik.svggen.SVGGeneratorContext;
import org.apache.batik.svggen.SVGGraphics2D;
import org.apache.batik.svggen.SVGIDGenerator;
import org.jfree.chart.JFreeChart;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;

/** Draws a chart as SVG that says in words what it shows, for those who can't see it. */
final class Drawing {

    private static final String SVG = SVGDOMImplementation.SVG_NAMESPACE_URI;

    /** The writer breaks lines inside tags, which no reader of a page expects. */
    private static final Pattern LOOSE_END = Pattern.compile("\\R\\s*(/?>)");

    private Drawing() {}

    /**
     * The SVG of a chart, to stand inside a page.
     *
     * @param id unique on its page
     */
    static String of(
            JFreeChart chart, Lettering lettering, String id, int width, int height, String title, String description) {
        Document document = SVGDOMImplementation.getDOMImplementation().createDocument(SVG, "svg", null);
        SVGGeneratorContext context = SVGGeneratorContext.createDefault(document);
        context.setComment(null);
        context.setIDGenerator(new SVGIDGenerator() {
            @Override
            public String generateID(String prefix) {
                return id + "-" + super.generateID(prefix);
            }
        });
        SVGGraphics2D graphics = new SVGGraphics2D(context, lettering == Lettering.OUTLINES);
        chart.draw(graphics, new Rectangle2D.Double(0, 0, width, height));
        Element root = graphics.getRoot();
        root.setAttribute("width", Integer.toString(width));
        root.setAttribute("height", Integer.toString(height));
        root.setAttribute("viewBox", "0 0 " + width + " " + height);
        root.setAttribute("role", "img");
        root.setAttribute("alt", title + ". " + description);
        root.setAttribute("aria-labelledby", id + "-title " + id + "-desc");
        setWidths(root);
        root.insertBefore(words(document, "desc", id + "-desc", description), root.getFirstChild());
        root.insertBefore(words(document, "title", id + "-title", title), root.getFirstChild());
        return text(graphics, root).replace("\"genericDefs\"", "\"" + id + "-defs\"");
    }

    /** Words keep the width that they were laid out for, whatever type a screen sets them in, so that none covers another. */
    private static void setWidths(Element root) {
        NodeList texts = root.getElementsByTagNameNS(SVG, "text");
        for (int index = 0; index < texts.getLength(); index++) {
            Element text = (Element) texts.item(index);
            double width = ChartStyle.widthOf(text.getTextContent());
            if (width > 0) {
                text.setAttribute("textLength", String.format(Locale.ROOT, "%.1f", width));
                text.setAttribute("lengthAdjust", "spacingAndGlyphs");
            }
        }
    }

    private static Element words(Document document, String name, String id, String text) {
        Element element = document.createElementNS(SVG, name);
        element.setAttribute("id", id);
        element.setTextContent(text);
        return element;
    }

    private static String text(SVGGraphics2D graphics, Element root) {
        StringWriter writer = new StringWriter();
        try {
            graphics.stream(root, writer, false, true);
        } catch (IOException impossible) {
            throw new UncheckedIOException("A string takes any text", impossible);
        }
        String written = writer.toString();
        return LOOSE_END.matcher(written.substring(written.indexOf("<svg"))).replaceAll("$1");
    }
}
