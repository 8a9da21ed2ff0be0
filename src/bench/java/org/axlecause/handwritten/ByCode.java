package org.axlecause.handwritten;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** What is known of a type of facts, by their code. */
@SuppressWarnings("EnumOrdinal") // Why: the lists are made in this run, so no ordinal outlives it.
final class ByCode<C extends Enum<C>, T> extends Known<T> {

    private final List<List<T>> byCode;
    private final Function<T, @Nullable C> code;

    ByCode(Class<C> codes, Function<T, @Nullable C> code) {
        this.byCode = Stream.of(codes.getEnumConstants())
                .<List<T>>map(one -> new ArrayList<>())
                .toList();
        this.code = code;
    }

    /** Those of one code; no copy. */
    List<T> of(C wanted) {
        return byCode.get(wanted.ordinal());
    }

    @Override
    void tell(T fact) {
        super.tell(fact);
        C key = code.apply(fact);
        if (key != null) {
            of(key).add(fact);
        }
    }

    @Override
    void forget(List<T> latest) {
        for (int at = latest.size() - 1; at >= 0; at--) {
            C key = code.apply(latest.get(at));
            if (key != null) {
                List<T> ofTheCode = of(key);
                ofTheCode.remove(ofTheCode.size() - 1);
            }
        }
        super.forget(latest);
    }
}
