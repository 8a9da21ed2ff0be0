package org.axlecause.inference;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.axlecause.facts.Conclusion;

/** What the rule base concluded, in a stated order. */
public final class Conclusions {

    private final Map<Class<?>, List<Conclusion>> byType;

    private Conclusions(Map<Class<?>, List<Conclusion>> byType) {
        this.byType = byType;
    }

    /** Conclusions sorted by type and by their words and grounds, whatever order they were drawn in. */
    static Conclusions of(Iterable<? extends Conclusion> drawn) {
        Map<Class<?>, List<Conclusion>> byType = new LinkedHashMap<>();
        for (Conclusion conclusion : drawn) {
            byType.computeIfAbsent(conclusion.getClass(), type -> new ArrayList<>())
                    .add(conclusion);
        }
        Comparator<Conclusion> order = Comparator.comparing(Conclusion::because).thenComparing(Object::toString);
        byType.values().forEach(list -> list.sort(order));
        return new Conclusions(byType);
    }

    /** All conclusions. */
    Map<Class<?>, List<Conclusion>> byType() {
        return byType;
    }

    /** The conclusions of one type. */
    public <T extends Conclusion> List<T> of(Class<T> type) {
        return byType.getOrDefault(type, List.of()).stream().map(type::cast).toList();
    }
}
