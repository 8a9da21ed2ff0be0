package org.axlecause.pages;

import com.github.benmanes.caffeine.cache.Cache;
import com.github.benmanes.caffeine.cache.Caffeine;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.Duration;
import java.util.function.Supplier;

/** Answers that were asked for a moment ago, with their charts, as long as what they tell is still so and there is room. */
@ApplicationScoped
class KeptAnswers {

    private static final long MOST_CHARACTERS = 16_000_000;
    private static final Duration UNASKED = Duration.ofMinutes(10);

    private final Cache<String, NumbersPage.Answer> kept = Caffeine.newBuilder()
            .maximumWeight(MOST_CHARACTERS)
            .weigher(
                    (String tag, NumbersPage.Answer answer) -> answer.toString().length())
            .expireAfterAccess(UNASKED)
            .build();

    /** The answer with this tag, made where none is kept. */
    NumbersPage.Answer of(String tag, Supplier<NumbersPage.Answer> answer) {
        return kept.get(tag, unknown -> answer.get());
    }
}
