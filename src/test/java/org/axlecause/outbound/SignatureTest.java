package org.axlecause.outbound;

import static org.assertj.core.api.Assertions.assertThat;

import com.standardwebhooks.Webhook;
import java.util.Base64;
import java.util.List;
import org.junit.jupiter.api.Test;

class SignatureTest {

    private static final String ID = "msg_p5jXN8AQM9LWM0D4loKWxJek";
    private static final long SECONDS = 1614265330L;
    private static final String BODY = "{\"test\": 2432232314}";

    /** The example of the reference libraries of Standard Webhooks, test "sign function works". */
    @Test
    void the_published_example_has_the_published_signature() {
        Secret secret = Secret.of(Base64.getDecoder().decode("MfKQ9r8GKYqrTwjUPD8ILPZIo2LaLaSw"));

        assertThat(Signature.of(ID, SECONDS, BODY, List.of(secret)))
                .isEqualTo("v1,g0hM9SsE+OTPJTGt/tmIKtSyZlE3uFJELVlNIOLJ1OE=");
    }

    /** By the Java library of Standard Webhooks, com.standardwebhooks:standardwebhooks. */
    @Test
    void the_library_of_the_standard_signs_alike_with_each_secret() throws Exception {
        Secret present = Secret.made();
        Secret former = Secret.made();

        String signature = Signature.of(ID, SECONDS, BODY, List.of(present, former));

        assertThat(signature)
                .isEqualTo(new Webhook(present.text()).sign(ID, SECONDS, BODY) + " "
                        + new Webhook(former.text()).sign(ID, SECONDS, BODY));
    }

    @Test
    void a_secret_shows_its_32_bytes_only_when_it_is_asked_to() {
        Secret secret = Secret.made();

        assertThat(secret.text()).matches("whsec_[A-Za-z0-9+/]{43}=");
        assertThat(Base64.getDecoder().decode(secret.text().substring("whsec_".length())))
                .isEqualTo(secret.bytes());
        assertThat(secret).hasToString("whsec_…").isNotEqualTo(Secret.made()).isEqualTo(Secret.of(secret.bytes()));
    }
}
