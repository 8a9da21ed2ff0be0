package org.axlecause.pages;

import java.io.StringReader;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import javax.xml.parsers.DocumentBuilderFactory;
import org.w3c.dom.Document;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;

/** What a drawing holds, for tests. */
final class Svg {

    private Svg() {}

    static List<String> texts(String svg) throws Exception {
        NodeList nodes = parsed(svg).getElementsByTagName("text");
        List<String> texts = new ArrayList<>();
        for (int index = 0; index < nodes.getLength(); index++) {
            texts.add(nodes.item(index).getTextContent().strip());
        }
        return texts;
    }

    static String id(Document document, String element) {
        return document.getElementsByTagName(element)
                .item(0)
                .getAttributes()
                .getNamedItem("id")
                .getNodeValue();
    }

    static List<String> ids(String svg) {
        return found(svg, "\\bid=\"([^\"]+)\"");
    }

    static List<String> colours(String svg) {
        return found(svg, "rgb\\(([^)]+)\\)");
    }

    static boolean isGrey(String rgb) {
        String[] parts = rgb.split(",");
        return parts[0].strip().equals(parts[1].strip()) && parts[1].strip().equals(parts[2].strip());
    }

    private static List<String> found(String text, String pattern) {
        return Pattern.compile(pattern)
                .matcher(text)
                .results()
                .map((MatchResult result) -> result.group(1))
                .toList();
    }

    static Document parsed(String svg) throws Exception {
        return DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(new InputSource(new StringReader(svg)));
    }
}
