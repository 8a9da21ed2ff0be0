package org.axlecause.pages;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Lists of the rulebook, all or those entries that a search finds.
 *
 * @param kinds names of all lists with their addresses
 * @param present the list that is shown; null where several are
 * @param asked what was searched for; empty for nothing
 * @param lists the lists
 */
public record RulebookLists(List<Kind> kinds, @Nullable String present, String asked, List<Listed> lists) {

    /**
     * A list that can be opened.
     *
     * @param code its word in addresses
     * @param name its name
     */
    public record Kind(String code, String name) {}

    /**
     * A list with its entries.
     *
     * @param kind which one
     * @param about what it holds
     * @param entries its entries
     * @param groups the same in groups; empty where they stand in none
     * @param more how many more there are than are shown
     */
    public record Listed(Kind kind, String about, List<Line> entries, List<Group> groups, int more) {}

    /**
     * Entries that belong together.
     *
     * @param title what they are about
     * @param entries the entries
     */
    public record Group(String title, List<Line> entries) {}

    /**
     * An entry in a list.
     *
     * @param code its code
     * @param name its name in words
     * @param text its words
     * @param address where it stands
     */
    public record Line(String code, String name, String text, String address) {

        /** The same entry with other words. */
        Line saying(String other) {
            return new Line(code, name, other, address);
        }
    }

    /** What was searched for, as addresses write it. */
    public String askedInAddress() {
        return URLEncoder.encode(asked, StandardCharsets.UTF_8);
    }

    /** How many entries are shown. */
    public int count() {
        return lists.stream()
                .mapToInt(list -> list.entries().size() + list.more())
                .sum();
    }
}
