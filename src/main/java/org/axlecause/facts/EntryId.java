package org.axlecause.facts;

/**
 * Identity of an entry in a case: CloudEvents {@code source} and {@code id}.
 *
 * @param source URI reference of the sender
 * @param id identifier, unique at the source
 */
public record EntryId(String source, String id) implements Comparable<EntryId> {

    @Override
    public int compareTo(EntryId other) {
        int bySource = source.compareTo(other.source);
        return bySource != 0 ? bySource : id.compareTo(other.id);
    }

    @Override
    public String toString() {
        return source + "#" + id;
    }
}
