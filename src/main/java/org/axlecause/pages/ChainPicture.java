package org.axlecause.pages;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;

/**
 * The chain from a cause to what it shows, as boxes below each other; all measures in units of the drawing.
 *
 * @param id unique on its page
 * @param title what it shows
 * @param words the chain in words
 * @param height height of the drawing
 * @param boxes the boxes from the root downwards
 */
public record ChainPicture(String id, String title, List<String> words, int height, List<Box> boxes) {

    private static final int LINE = 19;
    private static final int HEAD = 30;
    private static final int FOOT = 10;
    private static final int GAP = 26;
    private static final int EDGE = 2;
    private static final int LONGEST = 48;

    /**
     * A box.
     *
     * @param top upper edge
     * @param height its height
     * @param basis seen or inferred
     * @param lines its words
     * @param last whether nothing follows from it
     */
    public record Box(int top, int height, String basis, List<Line> lines, boolean last) {

        /** Whether nobody has seen it. */
        public boolean inferred() {
            return !basis.equals("seen");
        }

        /** Where its basis is written. */
        public int basisAt() {
            return top + LINE;
        }

        /** Its lower edge, where the arrow begins. */
        public int bottom() {
            return top + height;
        }

        /** Where the arrow's point is. */
        public int next() {
            return bottom() + GAP - EDGE;
        }
    }

    /**
     * A line of words.
     *
     * @param at its base line
     * @param text the words
     */
    public record Line(int at, String text) {}

    static ChainPicture of(String id, JsonNode chain, int axles) {
        List<Box> boxes = new ArrayList<>();
        List<String> words = new ArrayList<>();
        int top = EDGE;
        for (int index = 0; index < chain.size(); index++) {
            JsonNode node = chain.get(index);
            String basis = node.path("basis").asText();
            String text = PlainWords.sentence(node.path("text").asText()) + ", "
                    + PlainWords.placeOrVehicle(node.path("place"), axles);
            words.add(text + " (" + basis + ")");
            List<Line> lines = new ArrayList<>();
            for (String line : wrapped(text)) {
                lines.add(new Line(top + HEAD + LINE * (lines.size() + 1) - EDGE * 2, line));
            }
            int height = HEAD + LINE * lines.size() + FOOT;
            boolean last = index == chain.size() - 1;
            boxes.add(new Box(top, height, basis, lines, last));
            top += height + (last ? EDGE : GAP);
        }
        return new ChainPicture(id, "How the cause leads to what was measured", words, top, boxes);
    }

    private static List<String> wrapped(String text) {
        List<String> lines = new ArrayList<>();
        StringBuilder line = new StringBuilder();
        for (String word : text.split(" ", -1)) {
            if (!line.isEmpty() && line.length() + 1 + word.length() > LONGEST) {
                lines.add(line.toString());
                line.setLength(0);
            }
            line.append(line.isEmpty() ? "" : " ").append(word);
        }
        lines.add(line.toString());
        return lines;
    }
}
