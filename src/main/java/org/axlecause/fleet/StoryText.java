package org.axlecause.fleet;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** A text of a told story, cut where a copy of the story says something else. */
final class StoryText {

    private final String[] pieces;
    private final int[] slots;

    private StoryText(String[] pieces, int[] slots) {
        this.pieces = pieces;
        this.slots = slots;
    }

    /** Cuts a text at each of these words. */
    static StoryText of(String text, List<String> words) {
        Matcher found = Pattern.compile(words.stream().map(Pattern::quote).collect(Collectors.joining("|")))
                .matcher(text);
        List<String> pieces = new ArrayList<>();
        List<Integer> slots = new ArrayList<>();
        int from = 0;
        while (found.find()) {
            pieces.add(text.substring(from, found.start()));
            slots.add(words.indexOf(found.group()));
            from = found.end();
        }
        pieces.add(text.substring(from));
        return new StoryText(
                pieces.toArray(String[]::new),
                slots.stream().mapToInt(Integer::intValue).toArray());
    }

    /** The text with other words in the places of those that it was cut at, in their order. */
    String with(List<String> words) {
        int length = 0;
        for (String piece : pieces) {
            length += piece.length();
        }
        for (int slot : slots) {
            length += words.get(slot).length();
        }
        StringBuilder text = new StringBuilder(length);
        for (int index = 0; index < slots.length; index++) {
            text.append(pieces[index]).append(words.get(slots[index]));
        }
        return text.append(pieces[slots.length]).toString();
    }

    /** How often the word of that number stands in it. */
    int count(int word) {
        int count = 0;
        for (int slot : slots) {
            count += slot == word ? 1 : 0;
        }
        return count;
    }
}
