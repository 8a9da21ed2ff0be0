package org.axlecause.access;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.node.ObjectNode;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.QuarkusTestProfile;
import io.quarkus.test.junit.TestProfile;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.security.KeyFactory;
import java.security.KeyPair;
import java.security.KeyPairGenerator;
import java.security.PrivateKey;
import java.security.Signature;
import java.security.spec.PKCS8EncodedKeySpec;
import java.time.Instant;
import java.util.Base64;
import java.util.Map;
import java.util.function.UnaryOperator;
import org.axlecause.shared.Json;
import org.junit.jupiter.api.Test;

/** People with access tokens: JSON Web Tokens (RFC 7519) signed by RS256, made here and checked by the platform. */
@QuarkusTest
@TestProfile(PeopleApiTest.WithPeople.class)
class PeopleApiTest {

    private static final String ISSUER = "https://sign-in.example.org";
    private static final String PRIVATE = "axlecause.test.sign-in-key";

    @Inject
    MakeKey makeKey;

    /** A provider whose public key is known, so that nothing need be asked over the network. */
    public static class WithPeople implements QuarkusTestProfile {
        @Override
        public Map<String, String> getConfigOverrides() {
            KeyPair pair = aPair();
            System.setProperty(
                    PRIVATE,
                    Base64.getEncoder().encodeToString(pair.getPrivate().getEncoded()));
            return Map.of(
                    "axlecause.access", "keys",
                    "quarkus.oidc.tenant-enabled", "true",
                    "quarkus.oidc.public-key",
                            Base64.getEncoder().encodeToString(pair.getPublic().getEncoded()),
                    "quarkus.oidc.client-id", "axlecause",
                    "quarkus.oidc.token.issuer", ISSUER,
                    "quarkus.oidc.token.audience", "axlecause");
        }
    }

    @Test
    void a_person_acts_for_the_tenant_and_within_the_roles_of_the_token() throws GeneralSecurityException {
        String desk = token(claims -> claims);
        String analyst = token(claims ->
                claims.set("axlecause_roles", Json.mapper().createArrayNode().add("analyst")));

        assertThat(get(desk, "/test/faulty").asString()).isEqualTo("\"chain-p\"");
        assertThat(get(desk, "/test/faulty/desk").statusCode()).isEqualTo(200);
        assertThat(get(analyst, "/test/faulty/desk").statusCode()).isEqualTo(403);
        assertThat(get(analyst, "/test/faulty/desk").jsonPath().getString("detail"))
                .startsWith("Your key or token needs the role desk here.")
                .doesNotContain("nora");
    }

    @Test
    void a_token_that_is_forged_expired_for_another_service_or_from_another_issuer_is_refused()
            throws GeneralSecurityException {
        String sound = token(claims -> claims);
        String forged = sound.substring(0, sound.lastIndexOf('.') + 1)
                + Base64.getUrlEncoder()
                        .withoutPadding()
                        .encodeToString(signature(
                                aPair().getPrivate(),
                                sound.substring(0, sound.lastIndexOf('.')).getBytes(StandardCharsets.US_ASCII)));

        assertThat(get(sound, "/test/faulty").statusCode()).isEqualTo(200);
        for (String token : new String[] {
            forged,
            token(claims -> claims.put("exp", Instant.now().minusSeconds(3600).getEpochSecond())),
            token(claims -> claims.put("aud", "another-service")),
            token(claims -> claims.put("iss", "https://elsewhere.example.org")),
            "a.b.c"
        }) {
            Response answer = get(token, "/test/faulty");
            assertThat(answer.statusCode()).isEqualTo(401);
            assertThat(answer.jsonPath().getString("code")).isEqualTo("not-authenticated");
        }
    }

    @Test
    void a_token_without_tenant_or_role_opens_nothing_and_keys_go_on_working() throws GeneralSecurityException {
        String noTenant = token(claims -> (ObjectNode) claims.without("axlecause_tenant"));
        String noRole = token(claims -> claims.put("axlecause_roles", "boss"));
        String key = makeKey.make("chain-p", new KeyTerms("people", Role.DESK, null, null), "test");

        assertThat(get(noTenant, "/test/faulty").statusCode()).isEqualTo(403);
        assertThat(get(noRole, "/test/faulty").statusCode()).isEqualTo(403);
        assertThat(get(key, "/test/faulty/desk").statusCode()).isEqualTo(200);
    }

    private static Response get(String token, String path) {
        return given().header("Authorization", "Bearer " + token).get(path);
    }

    private static String token(UnaryOperator<ObjectNode> change) throws GeneralSecurityException {
        ObjectNode claims = Json.mapper()
                .createObjectNode()
                .put("iss", ISSUER)
                .put("aud", "axlecause")
                .put("sub", "nora")
                .put("iat", Instant.now().getEpochSecond())
                .put("exp", Instant.now().plusSeconds(300).getEpochSecond())
                .put("axlecause_tenant", "chain-p")
                .put("axlecause_roles", "desk technician");
        String signed = encoded("{\"alg\":\"RS256\",\"typ\":\"JWT\"}") + "."
                + encoded(change.apply(claims).toString());
        byte[] key = Base64.getDecoder().decode(System.getProperty(PRIVATE));
        PrivateKey secret = KeyFactory.getInstance("RSA").generatePrivate(new PKCS8EncodedKeySpec(key));
        return signed + "."
                + Base64.getUrlEncoder()
                        .withoutPadding()
                        .encodeToString(signature(secret, signed.getBytes(StandardCharsets.US_ASCII)));
    }

    private static byte[] signature(PrivateKey key, byte[] bytes) throws GeneralSecurityException {
        Signature signature = Signature.getInstance("SHA256withRSA");
        signature.initSign(key);
        signature.update(bytes);
        return signature.sign();
    }

    private static String encoded(String text) {
        return Base64.getUrlEncoder().withoutPadding().encodeToString(text.getBytes(StandardCharsets.UTF_8));
    }

    private static KeyPair aPair() {
        try {
            KeyPairGenerator generator = KeyPairGenerator.getInstance("RSA");
            generator.initialize(2048);
            return generator.generateKeyPair();
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException("Every Java platform has RSA", e);
        }
    }
}
