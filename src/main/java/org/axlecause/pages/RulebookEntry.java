package org.axlecause.pages;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * An entry of the rulebook.
 *
 * @param kind the list that it stands in
 * @param name its name in words
 * @param code its code
 * @param text its words
 * @param standing how firmly it is known
 * @param source whose knowledge it is; null where the parts say it themselves
 * @param parts what else it says
 */
public record RulebookEntry(
        RulebookLists.Kind kind,
        String name,
        String code,
        String text,
        @Nullable String standing,
        @Nullable String source,
        List<Part> parts) {

    /**
     * A part of an entry.
     *
     * @param title what it is about
     * @param brief whether it is a few words that stand beside its title
     * @param known standing and source of all items that name none; null for none
     * @param items what it says
     */
    public record Part(
            String title, boolean brief, @Nullable String known, List<Item> items) {}

    /**
     * A statement, which may lead to another entry.
     *
     * @param text its words
     * @param address of the entry that it speaks of; null for none
     * @param known standing and source; null where the entry's own hold
     */
    public record Item(
            String text, @Nullable String address, @Nullable String known) {

        public Item {
            text = PlainWords.unparted(text);
            known = known == null ? null : PlainWords.unparted(known);
        }

        /** The statement without where it comes from, where that is said once for all. */
        Item withoutKnown(@Nullable String said) {
            return said != null && said.equals(known) ? new Item(text, address, null) : this;
        }
    }
}
